/**
 * The one way to change anything: role, input, rules, one transaction, trail.
 * The derived columns of every episode that was touched are refreshed before the transaction ends.
 */
import type { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { isAccountRole, may, type Permission } from "@/lib/access/roles";
import { beginning, canonicalJson, digestOf } from "@/lib/trail/chain";
import { announceChange } from "./changes";
import { newId, now } from "./clock";
import { database, type Transaction } from "./database";
import { refreshDerived } from "./derived-state";
import { InputRefused, NotAllowed, SavedOtherwise } from "./refusals";
import { ask, Confirmed, type Question } from "./unusual";

export interface Change {
  action: string;
  /** Kind and id of the record that changed. */
  kind: string;
  id: string;
  wearerId?: string | undefined;
  episodeId?: string | undefined;
  before?: unknown;
  after?: unknown;
}

/** What a command works with, inside its transaction. */
export interface Store {
  db: Transaction;
  actor: Actor;
  now: Date;
  newId: () => string;
  /** Adds an entry to the trail. An entry with an episode also marks that episode as changed. */
  note: (change: Change) => Promise<void>;
  /** Marks an episode as changed: its derived columns are refreshed. */
  touch: (episodeId: string) => void;
  /** Asks about what is possible and unusual, once: what was asked about at an earlier try is let pass. */
  ask: (questions: readonly Question[]) => void;
}

interface CommandParts<Input extends z.ZodType, Result> {
  permission: Permission;
  input: Input;
  /** Which wear trial this is about. A command that says none refuses whoever may do only one trial. */
  ofTrial?: (input: z.output<Input>) => string;
  run: (store: Store, input: z.output<Input>) => Promise<Result>;
}

export type Command<Result> = (actor: Actor, input: unknown) => Promise<Result>;

export function command<Input extends z.ZodType, Result>({
  permission,
  input,
  ofTrial,
  run,
}: CommandParts<Input, Result>): Command<Result> {
  return async (actor, raw) => {
    if (!may(actor, permission) || (!ofTrial && actor.onlyTrial !== undefined)) throw new NotAllowed(permission, actor.role);
    const { confirmed, rest } = withoutConfirmed(raw);
    const asked = parseInput(input, rest);
    if (actor.onlyTrial !== undefined && actor.onlyTrial !== ofTrial?.(asked)) throw new NotAllowed(permission, actor.role);
    return inTransaction(actor, (store) => run(store, asked), confirmed);
  };
}

/** What belongs to an account, whatever its role: a wearer by their own link has none. */
export function requireAccount({ role }: Actor, what: string): void {
  if (!isAccountRole(role)) throw new NotAllowed(what, role);
}

/** Every form may bring back what it was asked about; no command has a field for it. */
function withoutConfirmed(raw: unknown): { confirmed: readonly string[]; rest: unknown } {
  if (typeof raw !== "object" || raw === null || !("confirmed" in raw)) return { confirmed: [], rest: raw };
  const { confirmed, ...rest } = raw;
  return { confirmed: parseInput(Confirmed, confirmed), rest };
}

/** @throws InputRefused with a message for each field that is wrong */
export function parseInput<Input extends z.ZodType>(input: Input, raw: unknown): z.output<Input> {
  const parsed = input.safeParse(raw);
  if (!parsed.success) throw new InputRefused(fieldErrors(parsed.error));
  return parsed.data;
}

export async function inTransaction<Result>(
  actor: Actor,
  work: (store: Store) => Promise<Result>,
  confirmed: readonly string[] = [],
): Promise<Result> {
  const db = await database();
  const touched = new Set<string>();
  const done = await db.$transaction(
    async (transaction) => {
      const store: Store = {
        db: transaction,
        actor,
        now: now(),
        newId,
        touch: (episodeId) => void touched.add(episodeId),
        ask: (questions) => ask(questions, confirmed),
        note: async (change) => {
          if (change.episodeId !== undefined) touched.add(change.episodeId);
          await addToTrail(transaction, actor, store.now, change);
        },
      };
      const result = await work(store);
      for (const episodeId of touched) await refreshDerived(transaction, episodeId, { asOf: store.now, evidenceChanged: true });
      return result;
    },
    { timeout: 30_000, maxWait: 30_000 },
  );
  for (const episodeId of touched) announceChange(episodeId);
  return done;
}

/**
 * Whether the record was saved before with just these fields, so that sending it twice saves it once.
 *
 * @throws SavedOtherwise where it was saved with other ones: nothing that was typed passes for saved
 */
export async function isSavedAlready(
  { db }: Store,
  { kind, id, fields }: { kind: string; id: string | undefined; fields: unknown },
): Promise<boolean> {
  if (id === undefined) return false;
  const saved = await db.trailEntry.findFirst({
    where: { recordKind: kind, recordId: id },
    orderBy: { position: "asc" },
    select: { after: true, actorName: true },
  });
  if (!saved) return false;
  if (saved.after !== canonicalJson(plain(fields))) throw new SavedOtherwise(saved.actorName);
  return true;
}

/** Adds one entry to the end of the chain. */
export async function addToTrail(db: Transaction, actor: Actor, at: Date, change: Change): Promise<void> {
  const last = await db.trailEntry.findFirst({ orderBy: { position: "desc" }, select: { position: true, digest: true } });
  const entry = {
    position: (last?.position ?? 0) + 1,
    at: at.toISOString(),
    actorId: actor.id,
    actorName: actor.name,
    actorRole: actor.role,
    action: change.action,
    recordKind: change.kind,
    recordId: change.id,
    wearerId: change.wearerId ?? null,
    episodeId: change.episodeId ?? null,
    before: change.before === undefined ? null : canonicalJson(plain(change.before)),
    after: change.after === undefined ? null : canonicalJson(plain(change.after)),
    previousDigest: last?.digest ?? beginning,
  };
  await db.trailEntry.create({ data: { ...entry, at, digest: digestOf(entry) } });
}

/** Dates become text and undefined fields go, as in the JSON that is kept. */
const plain = (value: unknown): unknown => JSON.parse(JSON.stringify(value));

function fieldErrors(error: z.ZodError): Record<string, string> {
  const fields: Record<string, string> = {};
  for (const issue of error.issues) {
    const path = issue.code === "unrecognized_keys" ? [...issue.path, issue.keys[0] ?? ""] : issue.path;
    const name = path.map(String).join(".");
    fields[name] ??= issue.code === "unrecognized_keys" ? "This field is not known here." : issue.message;
  }
  return fields;
}
