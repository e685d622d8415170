import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { hashPassword, isPasswordOf, shortestPassword } from "@/lib/access/password";
import { accountRoles } from "@/lib/access/roles";
import { removeSecondFactor } from "@/lib/access/second-factor";
import { phone } from "./clinic-phone";
import { makeClinicKey } from "./clinic-signature";
import { clockOffsetMs, now } from "./clock";
import { command, inTransaction, parseInput, requireAccount, type Store } from "./command";
import { database } from "./database";
import { blankToNothing, choice, id, maybeText, text, version, yes } from "./input";
import { ChangedMeanwhile, InputRefused, Locked, NotFound } from "./refusals";

const password = (what: string) =>
  text(what, 200).pipe(z.string().min(shortestPassword, `A password has at least ${shortestPassword} characters.`));
const email = text("An e-mail address", 200)
  .pipe(z.email("This is no e-mail address."))
  .transform((address) => address.toLowerCase());

const accountFields = {
  name: text("A name", 120),
  email,
  credentialsLine: maybeText("The credentials line", 200),
};

const Opening = z.strictObject({
  clinicName: text("The clinic's name", 120),
  timeZone: text("The clinic's time zone", 60).refine(
    (zone) => Intl.supportedValuesOf("timeZone").includes(zone) || zone === "UTC",
    "Choose a time zone, as Europe/Lisbon.",
  ),
  phone,
  ...accountFields,
  password: password("A password"),
  invented: yes,
});

export const isOpened = async (): Promise<boolean> => (await (await database()).user.count()) > 0;

/** The first run of a new clinic: its name, its zone, and its first administrator. Works once. */
export async function openClinic(raw: unknown): Promise<{ userId: string }> {
  const { clinicName, timeZone, phone: number, invented, password, ...account } = parseInput(Opening, raw);
  if (clockOffsetMs !== 0 && !invented)
    throw new Locked("This server runs with a moved clock (FITTING_LEDGER_CLOCK_OFFSET_MS): only an invented clinic may.");
  const hash = await hashPassword(password);
  const setup = { id: "first-run", name: account.name, role: "administrator" } as const;
  const opened = await inTransaction(setup, async (store) => {
    if ((await store.db.user.count()) > 0) throw new Locked("This clinic is open already. Sign in instead.");
    await store.db.clinic.create({
      data: { id: 1, name: clinicName, timeZone, phone: number ?? null, invented, openedAt: now() },
    });
    const userId = await writeAccount(store, { ...account, role: "administrator", hash });
    await store.note({
      action: "opened the clinic",
      kind: "clinic",
      id: "1",
      after: { clinicName, timeZone, phone: number, administrator: account.name },
    });
    return { userId };
  });
  await makeClinicKey(now());
  return opened;
}

/** Gives a colleague an account. */
export const addAccount = command({
  permission: "manage accounts",
  input: z.strictObject({ ...accountFields, role: choice("a role", accountRoles), password: password("A first password") }),
  run: async (store, { password, ...account }) => {
    if (await store.db.user.findUnique({ where: { email: account.email } }))
      throw new InputRefused({ email: "Someone has an account with this address already." });
    const userId = await writeAccount(store, { ...account, hash: await hashPassword(password) });
    await store.note({ action: "added an account", kind: "account", id: userId, after: account });
    return { userId };
  },
});

/** Changes an account, or ends its use. Its name stays on what it signed. */
export const changeAccount = command({
  permission: "manage accounts",
  input: z.strictObject({
    userId: id("The account"),
    version,
    name: accountFields.name,
    credentialsLine: accountFields.credentialsLine,
    role: choice("a role", accountRoles),
    active: yes,
    /** For someone who lost theirs. */
    password: z.preprocess(blankToNothing, password("A new password").optional()),
    /** For someone who lost the device that gives their codes. */
    withoutCode: yes,
  }),
  run: async (store, { userId, version, active, credentialsLine, password, withoutCode, ...fields }) => {
    const account = await store.db.user.findUnique({ where: { id: userId } });
    if (!account) throw new NotFound("account");
    const before = { name: account.name, role: account.role, credentialsLine: account.credentialsLine, active: !account.banned };
    if (account.version !== version) throw new ChangedMeanwhile(`The account of ${account.name}`, before, account.version);
    if (userId === store.actor.id && (!active || fields.role !== "administrator"))
      throw new InputRefused({ role: "You cannot take your own rights away; another administrator can." });
    await store.db.user.update({
      where: { id: userId },
      data: {
        ...fields,
        credentialsLine: credentialsLine ?? null,
        banned: !active,
        updatedAt: store.now,
        version: { increment: 1 },
      },
    });
    if (password) await setPassword(store, userId, await hashPassword(password));
    if (withoutCode) await removeSecondFactor(store.db, userId);
    if (!active || fields.role !== account.role) await store.db.session.deleteMany({ where: { userId } });
    await store.note({
      action: "changed an account",
      kind: "account",
      id: userId,
      before,
      after: {
        ...fields,
        credentialsLine,
        active,
        ...(password ? { password: "set anew" } : {}),
        ...(withoutCode ? { secondFactor: "removed" } : {}),
      },
    });
    return { userId };
  },
});

const OwnPassword = z.strictObject({
  current: text("Your present password", 400),
  password: password("A new password"),
  again: text("The new password, again", 200),
});

/** A person changes their own password. Whoever gave them the first one does not know it from then on. */
export async function changeOwnPassword(actor: Actor, raw: unknown): Promise<{ userId: string }> {
  requireAccount(actor, "change a password");
  const input = parseInput(OwnPassword, raw);
  if (input.again !== input.password) throw new InputRefused({ again: "The two are not the same." });
  if (!(await isPasswordOf(await database(), actor.id, input.current)))
    throw new InputRefused({ current: "This is not your present password." });
  const hash = await hashPassword(input.password);
  return inTransaction(actor, async (store) => {
    await setPassword(store, actor.id, hash);
    await store.note({ action: "changed their own password", kind: "account", id: actor.id });
    return { userId: actor.id };
  });
}

/** A new password ends every session that the old one opened. */
async function setPassword(store: Store, userId: string, hash: string): Promise<void> {
  await store.db.credential.updateMany({
    where: { userId, providerId: "credential" },
    data: { password: hash, updatedAt: store.now },
  });
  await store.db.session.deleteMany({ where: { userId } });
}

async function writeAccount(
  store: Store,
  {
    hash,
    credentialsLine,
    ...account
  }: { name: string; email: string; role: string; credentialsLine?: string | undefined; hash: string },
): Promise<string> {
  const userId = store.newId();
  const times = { createdAt: store.now, updatedAt: store.now };
  await store.db.user.create({
    data: {
      ...account,
      ...times,
      id: userId,
      credentialsLine: credentialsLine ?? null,
      emailVerified: true,
      credentials: { create: { ...times, id: store.newId(), accountId: userId, providerId: "credential", password: hash } },
    },
  });
  return userId;
}
