/** Checks a signed release with nothing but its file and the clinic's public keys, and says in words what holds. */
import { type Assessment, assessReadiness, FitInputError, type Limits, limitsOfVersion } from "@/lib/fit";
import { Evidence } from "@/lib/records/evidence";
import { canonicalJson, sha256 } from "@/lib/trail/chain";
import { checkDetached } from "@/lib/trail/jws";
import type { PublicKey } from "@/lib/trail/keys";
import type { ReleaseFile } from "./release-file";

export interface ReleaseFinding {
  state: "met" | "not met" | "unknown";
  words: string;
}

export interface ReleaseCheck {
  /** *cannot tell* where nothing speaks against it and something could not be checked. */
  verdict: "holds" | "does not hold" | "cannot tell";
  /** In one sentence: what was signed, by whom, when; what it is now. */
  about: string;
  findings: ReleaseFinding[];
}

/** @param keys the clinic's public keys, from a hand that the reader trusts; none where there is no such hand */
export async function verifyRelease(file: ReleaseFile, keys: readonly PublicKey[]): Promise<ReleaseCheck> {
  const read = Evidence.safeParse(file.evidence);
  const findings = [
    digestFinding(file),
    await signatureFinding({ what: "The evidence", said: file.evidence, signature: file.signature }, keys),
    ...(read.success
      ? [assessmentFinding(read.data), ...(await laterFindings(file, read.data, keys))]
      : [{ state: "not met", words: "The evidence is not written as evidence of this program is." } as const]),
  ];
  const verdict = findings.some(({ state }) => state === "not met")
    ? "does not hold"
    : findings.some(({ state }) => state === "unknown")
      ? "cannot tell"
      : "holds";
  return { verdict, about: read.success ? aboutOf(read.data, file) : "No evidence that can be read.", findings };
}

function digestFinding({ evidence, digest }: ReleaseFile): ReleaseFinding {
  const computed = sha256(canonicalJson(evidence));
  return computed === digest
    ? { state: "met", words: `The evidence has the digest that the sheet names: ${digest}.` }
    : {
        state: "not met",
        words: `The evidence was altered, or belongs to another sheet: its digest is ${computed}, and the sheet names ${digest}.`,
      };
}

interface Signed {
  what: string;
  said: Record<string, unknown>;
  signature: string | null;
}

/** What was never kept without a signature. */
const formatsSigned = new Set(["fitting-evidence/2", "fitting-countersignature/1", "fitting-addendum/1", "fitting-withdrawal/1"]);

async function signatureFinding({ what, said, signature }: Signed, keys: readonly PublicKey[]): Promise<ReleaseFinding> {
  const { format, at } = said;
  if (signature === null && formatsSigned.has(String(format)))
    return { state: "not met", words: `${what} bears no signature, and what is of its kind always bears one: it was taken off.` };
  if (signature === null)
    return { state: "unknown", words: `${what} bears no signature of the clinic's key: it was made before there were keys.` };
  if (keys.length === 0)
    return { state: "unknown", words: `${what} bears a signature, and no public key was given to check it with.` };
  const check = await checkDetached(canonicalJson(said), signature, keys);
  if (check.state === "does not hold")
    return { state: "not met", words: `${what} does not bear out its signature: one of the two was altered.` };
  if (check.state === "unknown key")
    return {
      state: "not met",
      words: `${what} was signed with a key that is not among the given ones (${check.kid ?? "unnamed"}).`,
    };
  const { kid, from, until } = check.key;
  const instant = typeof at === "string" ? at : "";
  if (instant < from || (until !== undefined && instant > until))
    return {
      state: "not met",
      words: `${what} says that it was signed at ${instant}, when the key ${kid} was not in use (from ${from}${until ? ` until ${until}` : ""}).`,
    };
  return { state: "met", words: `${what} was signed with the clinic's key ${kid}.` };
}

/** Whether this program, with the limits of that day, judges the same evidence as the signer was told. */
function assessmentFinding({ bundle, assessment, rulesVersion }: Evidence): ReleaseFinding {
  const limits = knownLimits(rulesVersion);
  if (!limits) return { state: "unknown", words: `It was judged by rules that this program does not know (${rulesVersion}).` };
  const again = judgedAgain(bundle, limits);
  if (again === null) return { state: "not met", words: "The evidence contradicts itself: it cannot be judged again." };
  return judged(again) === judged(assessment)
    ? {
        state: "met",
        words: `Judged again by the rules of that day (${rulesVersion}) the evidence is still “${again.decision}”.`,
      }
    : {
        state: "not met",
        words: `Judged again by the rules of that day (${rulesVersion}) the evidence is “${again.decision}”; signed was “${assessment.decision}”, or other checks led to it.`,
      };
}

/** Null of evidence that was bent until nothing can be made of it. */
function judgedAgain(bundle: Evidence["bundle"], limits: Limits): Assessment | null {
  try {
    return assessReadiness(bundle, limits);
  } catch (error) {
    if (error instanceof FitInputError) return null;
    throw error;
  }
}

const judged = ({ decision, gates }: Assessment): string =>
  canonicalJson([decision, gates.map(({ id, state, accepted }) => [id, state, accepted !== undefined])]);

function knownLimits(rulesVersion: string) {
  try {
    return limitsOfVersion(rulesVersion);
  } catch {
    return null;
  }
}

async function laterFindings(file: ReleaseFile, evidence: Evidence, keys: readonly PublicKey[]): Promise<ReleaseFinding[]> {
  const findings: ReleaseFinding[] = [];
  const later = async (what: string, { statement, signature }: NonNullable<ReleaseFile["withdrawal"]>) => {
    if (signature !== null && statement.digest !== file.digest)
      findings.push({ state: "not met", words: `${what} belongs to another release.` });
    findings.push(await signatureFinding({ what, said: statement, signature }, keys));
  };
  if (file.countersignature) {
    await later("The countersignature", file.countersignature);
    if (personOf(file.countersignature.statement)?.id === evidence.signedBy.id)
      findings.push({ state: "not met", words: "The countersignature is by the same person as the signature." });
  } else if (evidence.countersignAsked)
    findings.push({
      state: "not met",
      words: "A second prosthetist's signature was asked for, and there is none: not in force.",
    });
  for (const [index, addendum] of file.addenda.entries()) await later(`Addendum ${index + 1}`, addendum);
  if (file.withdrawal) await later("The withdrawal", file.withdrawal);
  return findings;
}

function aboutOf({ meaning, signedBy, at, timeZone, position }: Evidence, { withdrawal }: ReleaseFile): string {
  const signed = `“${meaning}”, signed by ${signedBy.name}${signedBy.credentialsLine ? `, ${signedBy.credentialsLine}` : ""}, at ${at} (time zone of the clinic: ${timeZone})`;
  const place = position === undefined ? "" : `, signature ${position} of the clinic`;
  const now = withdrawal
    ? ` WITHDRAWN at ${String(withdrawal.statement.at)}: ${String(withdrawal.statement.why)} Make nothing from it.`
    : " This file knows of no withdrawal; a later one is known only to the clinic.";
  return `${signed}${place}.${now}`;
}

function personOf(statement: Record<string, unknown>): { id: unknown } | null {
  const { signedBy } = statement;
  return typeof signedBy === "object" && signedBy !== null && "id" in signedBy ? { id: signedBy.id } : null;
}
