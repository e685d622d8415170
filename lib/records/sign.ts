import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { isPasswordOf } from "@/lib/access/password";
import { may } from "@/lib/access/roles";
import { type Assessment, acceptableGates, assessReadiness, gateIds } from "@/lib/fit";
import { beginning, canonicalJson, sha256 } from "@/lib/trail/chain";
import { type EpisodeWhole, readEpisode, toBundle } from "./bundle-of";
import { now } from "./clock";
import { inTransaction, parseInput, type Store } from "./command";
import { database } from "./database";
import { findEpisode } from "./episode-for-change";
import { choice, id, rows, text, version } from "./input";
import { limitsInForce } from "./limits-in-force";
import { releaseMeaning, trialMeaning } from "./meanings";
import { setSocketState } from "./move-socket";
import { ChangedMeanwhile, InputRefused, Locked, NotAllowed, NotReady } from "./refusals";

export const meanings = [trialMeaning, releaseMeaning] as const;

/** What the signer declares, by what the signature means. */
export const statements: Record<(typeof meanings)[number], string> = {
  [trialMeaning]: "I have examined the evidence of this wear trial and accept it.",
  [releaseMeaning]: "I have examined the evidence and release this socket for definitive fabrication.",
};

const Signing = z.strictObject({
  episodeId: id("The episode"),
  evidenceVersion: version,
  meaning: choice("what the signature means", meanings),
  acceptances: rows(z.strictObject({ gate: choice("a gate", gateIds), why: text("The reason for accepting it", 1000) }), 20),
  /** Gates close to their limit that the signer has read. */
  closeRead: z.preprocess((value) => (typeof value === "string" ? [value] : (value ?? [])), z.array(z.string())),
  password: text("Your password", 400),
});
type Signing = z.output<typeof Signing>;

/**
 * A prosthetist takes responsibility: the evidence is frozen as it stands, with its assessment, under a digest
 * chained to the signature before. Nothing that forbids, and nothing that is open and not accepted, can be signed.
 */
export async function sign(actor: Actor, raw: unknown): Promise<{ signOffId: string; episodeId: string }> {
  if (!may(actor, "sign")) throw new NotAllowed("sign", actor.role);
  const input = parseInput(Signing, raw);
  await checkPassword(actor, input.password, { kind: "episode", id: input.episodeId });
  return inTransaction(actor, async (store) => {
    const { closedAt, onHoldAt } = await findEpisode(store, input.episodeId);
    if (closedAt || onHoldAt)
      throw new Locked(`This episode is ${closedAt ? "closed" : "on hold"}. Take it up again before anything is signed.`);
    const episode = await readEpisode(store.db, input.episodeId);
    if (episode.evidenceVersion !== input.evidenceVersion)
      throw new ChangedMeanwhile("The evidence", { decision: episode.decisionSentence }, episode.evidenceVersion);
    const subject = episode.sockets.at(-1);
    if (!subject) throw new Locked("There is no socket to sign for yet.");
    refuseSecondSignature(episode, subject.id, input.meaning);
    const { assessment, evidence, rulesVersion, timeZone, previousDigest, position } = await freeze(store, episode, input);
    refuseUnread(assessment, input.closeRead);

    const signOffId = store.newId();
    const digest = sha256(evidence);
    await store.db.signOff.create({
      data: {
        id: signOffId,
        position,
        episodeId: episode.id,
        socketId: subject.id,
        meaning: input.meaning,
        statement: statements[input.meaning],
        byId: actor.id,
        byName: actor.name,
        credentialsLine: actor.credentialsLine ?? null,
        at: store.now,
        timeZone,
        rulesVersion,
        evidence,
        digest,
        previousDigest,
        acceptances: {
          create: input.acceptances.map(({ gate, why }) => ({
            id: store.newId(),
            episodeId: episode.id,
            socketId: subject.id,
            gate,
            why,
            byId: actor.id,
            byName: actor.name,
            at: store.now,
          })),
        },
      },
    });
    if (input.meaning === releaseMeaning) await setSocketState(store, { socket: subject, state: "released", at: store.now });
    await store.note({
      action: `signed: ${input.meaning}`,
      kind: "sign-off",
      id: signOffId,
      wearerId: episode.wearerId,
      episodeId: episode.id,
      after: {
        meaning: input.meaning,
        socket: subject.number,
        decision: assessment.decision,
        digest,
        acceptances: input.acceptances,
      },
    });
    return { signOffId, episodeId: episode.id };
  });
}

const Withdrawing = z.strictObject({
  signOffId: id("The signature"),
  why: text("Why it is withdrawn", 2000),
  password: text("Your password", 400),
});

/** Withdraws a signature, with a reason. The signature stays, marked wherever it is shown. */
export async function withdrawSignature(actor: Actor, raw: unknown): Promise<{ signOffId: string; episodeId: string }> {
  if (!may(actor, "withdraw a signature")) throw new NotAllowed("withdraw a signature", actor.role);
  const { signOffId, why, password } = parseInput(Withdrawing, raw);
  await checkPassword(actor, password, { kind: "sign-off", id: signOffId });
  return inTransaction(actor, async (store) => {
    const signOff = await store.db.signOff.findUnique({ where: { id: signOffId }, include: { withdrawal: true, socket: true } });
    if (!signOff) throw new InputRefused({ signOffId: "There is no such signature." });
    if (signOff.withdrawal) throw new Locked(`${signOff.withdrawal.byName} withdrew this signature already.`);
    const episode = await findEpisode(store, signOff.episodeId);
    if (signOff.meaning === trialMeaning && episode.signOffs.some(({ meaning }) => meaning === releaseMeaning))
      throw new Locked("A release rests on this acceptance. Withdraw the release first.");
    await store.db.withdrawal.create({
      data: { id: store.newId(), signOffId, byId: actor.id, byName: actor.name, at: store.now, why },
    });
    if (signOff.meaning === releaseMeaning)
      await setSocketState(store, { socket: signOff.socket, state: "fitted", at: store.now, note: "release withdrawn" });
    await store.note({
      action: `withdrew a signature: ${signOff.meaning}`,
      kind: "sign-off",
      id: signOffId,
      wearerId: episode.wearerId,
      episodeId: episode.id,
      before: { meaning: signOff.meaning, by: signOff.byName, at: signOff.at },
      after: { why },
    });
    return { signOffId, episodeId: episode.id };
  });
}

const mostWrongPasswords = 5;
const wrongPasswordMinutes = 15;
const wrongPasswordAction = "gave a wrong password when signing";

async function checkPassword(actor: Actor, password: string, record: { kind: string; id: string }): Promise<void> {
  const db = await database();
  const since = new Date(now().getTime() - wrongPasswordMinutes * 60_000);
  const wrong = await db.trailEntry.count({ where: { actorId: actor.id, action: wrongPasswordAction, at: { gte: since } } });
  if (wrong >= mostWrongPasswords)
    throw new InputRefused({ password: `Too many wrong passwords. Try again in ${wrongPasswordMinutes} minutes.` });
  if (await isPasswordOf(db, actor.id, password)) return;
  await inTransaction(actor, (store) => store.note({ action: wrongPasswordAction, ...record }));
  throw new InputRefused({ password: "This is not your password. Nothing was signed." });
}

function refuseSecondSignature(episode: EpisodeWhole, socketId: string, meaning: string): void {
  const standing = episode.signOffs.filter((signOff) => signOff.withdrawal === null);
  if (standing.some((signOff) => signOff.meaning === releaseMeaning)) throw new Locked("This episode is released already.");
  if (standing.some((signOff) => signOff.meaning === meaning && signOff.socketId === socketId))
    throw new Locked("This was signed already.");
}

async function freeze(store: Store, episode: EpisodeWhole, input: Signing) {
  const [clinic, limits, last] = await Promise.all([
    store.db.clinic.findUniqueOrThrow({ where: { id: 1 } }),
    limitsInForce(store.db),
    store.db.signOff.findFirst({ orderBy: { position: "desc" }, select: { position: true, digest: true } }),
  ]);
  const asFound = toBundle(episode, { asOf: store.now, timeZone: clinic.timeZone });
  const before = assessReadiness(asFound, limits);
  refuseNeedlessAcceptances(before, input);
  const bundle = {
    ...asFound,
    acceptances: [
      ...asFound.acceptances,
      ...input.acceptances.map(({ gate, why }) => ({ gate, why, by: store.actor.name, at: store.now.toISOString() })),
    ],
  };
  const assessment = assessReadiness(bundle, limits);
  if (assessment.decision !== "ready" && assessment.decision !== "ready with conditions") throw new NotReady(assessment);
  const previousDigest = last?.digest ?? beginning;
  const subject = episode.sockets.at(-1);
  const evidence = canonicalJson(
    JSON.parse(
      JSON.stringify({
        format: "fitting-evidence/1",
        meaning: input.meaning,
        statement: statements[input.meaning],
        signedBy: { id: store.actor.id, name: store.actor.name, credentialsLine: store.actor.credentialsLine },
        at: store.now.toISOString(),
        timeZone: clinic.timeZone,
        previousDigest,
        rulesVersion: assessment.rulesVersion,
        limits,
        closeRead: input.closeRead,
        bundle,
        assessment,
        bench: subject && {
          clinicNumber: episode.wearer.clinicNumber,
          lengthMm: subject.lengthMm,
          material: subject.material,
          wallMm: subject.wallMm,
          suspension: subject.suspension,
          trimLines: subject.trimLines,
          benchNote: subject.benchNote,
          deviceNote: episode.deviceNote,
        },
      }),
    ),
  );
  return {
    assessment,
    evidence,
    rulesVersion: assessment.rulesVersion,
    timeZone: clinic.timeZone,
    previousDigest,
    position: (last?.position ?? 0) + 1,
  };
}

/** Only a gate that may be accepted, and that is open, takes an acceptance. */
function refuseNeedlessAcceptances(assessment: Assessment, { acceptances }: Signing): void {
  acceptances.forEach(({ gate }, index) => {
    const state = assessment.gates.find(({ id }) => id === gate)?.state;
    if (!(acceptableGates as readonly string[]).includes(gate))
      throw new InputRefused({ [`acceptances.${index}.why`]: "This check cannot be accepted; it has to be met." });
    if (state !== "not met" && state !== "unknown")
      throw new InputRefused({ [`acceptances.${index}.why`]: "This check is met: there is nothing to accept." });
  });
}

function refuseUnread(assessment: Assessment, read: readonly string[]): void {
  const unread = assessment.gates.filter(({ id, state }) => state === "close" && !read.includes(id));
  if (unread.length > 0)
    throw new InputRefused(
      Object.fromEntries(unread.map(({ id }) => [`closeRead.${id}`, "Close to its limit: tick it once you have read it."])),
    );
}
