/**
 * The one way to change anything: role, input, rules, one transaction, trail.
 * The derived columns of every episode that was touched are refreshed before the transaction ends; a quick command marks
 * them in it as due, and they are refreshed right after.
 */
import type { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { isAccountRole, may, type Permission } from "@/lib/access/roles";
import { beginning, canonicalJson, digestOf } from "@/lib/trail/chain";
import { announceChange } from "./changes";
import { newId, now } from "./clock";
import { clientAndConnection, inBackground, inTurn, type Transaction } from "./database";
import { markDue, settleDue, settleIn } from "./derived-due";
import { refreshDerived } from "./derived-state";
import { InputRefused, NotAllowed, SavedOtherwise } from "./refusals";
import { checkedSql, type Sql, sqlOn, sqlTime } from "./sql";
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

export interface CommonStore {
  sql: Sql;
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

/** What a command works with, inside its transaction. */
export interface Store extends CommonStore {
  db: Transaction;
}

/** What a quick command works with: prepared statements, and nothing to wait for. */
export interface QuickStore extends CommonStore {
  /** Nobody waits for the derived columns: they follow a moment later, or with whoever reads next. */
  answerFirst: () => void;
}

interface CommandParts<Input extends z.ZodType, Result, Within> {
  permission: Permission;
  input: Input;
  /** Which wear trial this is about. A command that says none refuses whoever may do only one trial. */
  ofTrial?: (input: z.output<Input>) => string;
  run: (store: Within, input: z.output<Input>) => Promise<Result>;
}

export type Command<Result> = (actor: Actor, input: unknown) => Promise<Result>;

export const command = <Input extends z.ZodType, Result>(parts: CommandParts<Input, Result, Store>): Command<Result> =>
  behindDoor(parts, inTransaction);

/** For what comes many times a minute, from people who wait for the answer: only prepared statements. */
export const quickCommand = <Input extends z.ZodType, Result>(parts: CommandParts<Input, Result, QuickStore>): Command<Result> =>
  behindDoor(parts, inQuickTransaction);

type Transact<Within> = <Result>(
  actor: Actor,
  work: (store: Within) => Promise<Result>,
  options: { confirmed: readonly string[] },
) => Promise<Result>;

function behindDoor<Input extends z.ZodType, Result, Within>(
  { permission, input, ofTrial, run }: CommandParts<Input, Result, Within>,
  transact: Transact<Within>,
): Command<Result> {
  return async (actor, raw) => {
    if (!may(actor, permission) || (!ofTrial && actor.onlyTrial !== undefined)) throw new NotAllowed(permission, actor.role);
    const { confirmed, rest } = withoutConfirmed(raw);
    const asked = parseInput(input, rest);
    if (actor.onlyTrial !== undefined && actor.onlyTrial !== ofTrial?.(asked)) throw new NotAllowed(permission, actor.role);
    return transact(actor, (store) => run(store, asked), { confirmed });
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

/** The longest that a transaction may take, and until when it may still write. */
const longestMs = 30_000;
const lastWriteMs = 25_000;

export async function inTransaction<Result>(
  actor: Actor,
  work: (store: Store) => Promise<Result>,
  { confirmed = [], readsDerived = true }: { confirmed?: readonly string[]; readsDerived?: boolean } = {},
): Promise<Result> {
  const { client, connection } = await clientAndConnection();
  // In turns of its own, because much may be due; what comes between is settled in the transaction.
  if (readsDerived) await settleDue();
  const touched = new Set<string>();
  const done = await client.$transaction(
    async (transaction) => {
      const begunMs = performance.now();
      // A statement after the end would not be part of this transaction any more.
      const sql = checkedSql(sqlOn(connection), () => {
        if (performance.now() - begunMs > lastWriteMs) throw new Error("this transaction took too long");
      });
      if (readsDerived) await settleIn(transaction, sql);
      const store: Store = { ...commonStore(sql, { actor, confirmed, touched }), db: transaction };
      const result = await work(store);
      for (const episodeId of touched) await refreshDerived(transaction, episodeId, { asOf: store.now, evidenceChanged: true });
      return result;
    },
    { timeout: longestMs, maxWait: longestMs },
  );
  for (const episodeId of touched) announceChange(episodeId);
  return done;
}

async function inQuickTransaction<Result>(
  actor: Actor,
  work: (store: QuickStore) => Promise<Result>,
  { confirmed }: { confirmed: readonly string[] },
): Promise<Result> {
  const touched = new Set<string>();
  let answersFirst = false;
  const answerFirst = () => {
    answersFirst = true;
  };
  const result = await inTurn(async (sql) => {
    const store = { ...commonStore(sql, { actor, confirmed, touched }), answerFirst };
    const result = await work(store);
    for (const episodeId of touched) markDue(store.sql, episodeId, store.now);
    return result;
  });
  if (touched.size === 0) return result;
  if (answersFirst) inBackground(settleDue);
  else await settleDue();
  for (const episodeId of touched) announceChange(episodeId);
  return result;
}

function commonStore(
  sql: Sql,
  { actor, confirmed, touched }: { actor: Actor; confirmed: readonly string[]; touched: Set<string> },
): CommonStore {
  const at = now();
  return {
    ...{ sql, actor, now: at, newId },
    touch: (episodeId) => void touched.add(episodeId),
    ask: (questions) => ask(questions, confirmed),
    note: async (change) => {
      if (change.episodeId !== undefined) touched.add(change.episodeId);
      addToTrail(sql, actor, at, change);
    },
  };
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
function addToTrail(sql: Sql, actor: Actor, at: Date, change: Change): void {
  const found = sql.get("SELECT position, digest FROM TrailEntry ORDER BY position DESC LIMIT 1");
  const last = found as { position: number; digest: string } | undefined; // the columns above
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
  sql.run(
    `INSERT INTO TrailEntry (position, at, actorId, actorName, actorRole, action, recordKind, recordId, wearerId, episodeId,
       before, after, previousDigest, digest) VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)`,
    ...[entry.position, sqlTime(at), entry.actorId, entry.actorName, entry.actorRole, entry.action],
    ...[entry.recordKind, entry.recordId, entry.wearerId, entry.episodeId],
    ...[entry.before, entry.after, entry.previousDigest, digestOf(entry)],
  );
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
