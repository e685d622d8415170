/** The evidence as it stands at the moment of signing, judged, as the one text that is signed. */
import { type Assessment, acceptableGates, assessReadiness, type GateId } from "@/lib/fit";
import { beginning } from "@/lib/trail/chain";
import { type EpisodeWhole, toBundle } from "./bundle-of";
import { signedText } from "./clinic-signature";
import type { Store } from "./command";
import { limitsInForce } from "./limits-in-force";
import { type Meaning, releaseMeaning, statements } from "./meanings";
import type { ProvedBy } from "./prove-signer";
import { InputRefused, Locked, NotReady } from "./refusals";
import { digestOfShown } from "./shown-evidence";

interface Asked {
  id: string;
  meaning: Meaning;
  acceptances: readonly { gate: GateId; why: string }[];
  closeRead: readonly string[];
  /** Digest of what the signer's page showed. */
  shown: string;
  definitiveMaterial: string | null;
  provedBy: ProvedBy;
}

export interface Frozen {
  assessment: Assessment;
  evidence: string;
  timeZone: string;
  previousDigest: string;
  position: number;
  countersignAsked: boolean;
}

/** @throws Locked, InputRefused, NotReady */
export async function freezeEvidence(store: Store, episode: EpisodeWhole, asked: Asked): Promise<Frozen> {
  const [clinic, limits, lastSigned, lastEntry] = await Promise.all([
    store.db.clinic.findUniqueOrThrow({ where: { id: 1 } }),
    limitsInForce(store.db),
    store.db.signOff.findFirst({ orderBy: { position: "desc" }, select: { position: true, digest: true } }),
    store.db.trailEntry.findFirst({ orderBy: { position: "desc" }, select: { position: true, digest: true } }),
  ]);
  const { timeZone } = clinic;
  const asFound = toBundle(episode, { asOf: store.now, timeZone });
  const before = assessReadiness(asFound, limits);
  if (digestOfShown(asFound, before) !== asked.shown)
    throw new Locked(
      `What is to be signed is not what this page shows any more; now: ${before.sentence} Nothing was signed. Open this page again and read it.`,
    );
  refuseNeedlessAcceptances(before, asked.acceptances);
  const accepted = asked.acceptances.map((one) => ({ ...one, by: store.actor.name, at: store.now.toISOString() }));
  const bundle = { ...asFound, acceptances: [...asFound.acceptances, ...accepted] };
  const assessment = assessReadiness(bundle, limits);
  if (assessment.decision !== "ready" && assessment.decision !== "ready with conditions") throw new NotReady(assessment);
  refuseUnread(assessment, asked.closeRead);

  const position = (lastSigned?.position ?? 0) + 1;
  const previousDigest = lastSigned?.digest ?? beginning;
  const countersignAsked = asked.meaning === releaseMeaning && clinic.countersignReleases === true;
  const evidence = signedText({
    format: "fitting-evidence/2",
    ...{ id: asked.id, position, previousDigest, timeZone, limits, bundle, assessment, countersignAsked },
    meaning: asked.meaning,
    statement: statements[asked.meaning],
    signedBy: { id: store.actor.id, name: store.actor.name, credentialsLine: store.actor.credentialsLine },
    provedBy: asked.provedBy,
    at: store.now.toISOString(),
    trail: lastEntry ?? undefined,
    rulesVersion: assessment.rulesVersion,
    closeRead: asked.closeRead,
    bench: { ...benchOf(episode), definitiveMaterial: asked.definitiveMaterial },
  });
  return { assessment, evidence, timeZone, previousDigest, position, countersignAsked };
}

function benchOf({ wearer, deviceNote, sockets }: EpisodeWhole) {
  const subject = sockets.at(-1);
  if (!subject) throw new Locked("There is no socket to sign for yet.");
  const { lengthMm, material, wallMm, suspension, trimLines, benchNote } = subject;
  return { clinicNumber: wearer.clinicNumber, lengthMm, material, wallMm, suspension, trimLines, benchNote, deviceNote };
}

/** Only a gate that may be accepted, and that is open, takes an acceptance. */
function refuseNeedlessAcceptances({ gates }: Assessment, acceptances: Asked["acceptances"]): void {
  acceptances.forEach(({ gate }, index) => {
    const state = gates.find(({ id }) => id === gate)?.state;
    if (!(acceptableGates as readonly string[]).includes(gate))
      throw new InputRefused({ [`acceptances.${index}.why`]: "This check cannot be accepted; it has to be met." });
    if (state !== "not met" && state !== "unknown")
      throw new InputRefused({ [`acceptances.${index}.why`]: "This check is met: there is nothing to accept." });
  });
}

function refuseUnread({ gates }: Assessment, read: readonly string[]): void {
  const unread = gates.filter(({ id, state }) => state === "close" && !read.includes(id));
  if (unread.length > 0)
    throw new InputRefused(
      Object.fromEntries(unread.map(({ id }) => [`closeRead.${id}`, "Close to its limit: tick it once you have read it."])),
    );
}
