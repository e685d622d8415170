/** What the check of a record found, in words. */
import path from "node:path";
import type { Anchors } from "@/lib/trail/anchors";
import { beginning } from "@/lib/trail/chain";
import type { ChainEnd, Walked } from "@/lib/trail/walk-chain";
import type { SignatureEnd } from "./record-file";

export interface Finding {
  state: "met" | "not met" | "unknown";
  words: string;
}

/** Of many alike so many are told, and how many more there are. */
const mostTold = 5;

export function findingsOf(
  walked: Walked,
  { anchors, signatures }: { anchors: Anchors; signatures: readonly SignatureEnd[] },
): Finding[] {
  return [
    chainFinding(walked),
    ...anchorFindings(walked, anchors),
    ...signatureFindings(walked, signatures),
    ...clockFindings(walked),
  ];
}

function chainFinding({ entries, broken }: Walked): Finding {
  if (broken) return notMet(`The chain breaks at entry ${broken.position}: ${broken.why}.`);
  if (entries === 0) return met("The record has no entry yet.");
  return met(`The chain holds over ${counted(entries, "entry", "entries")}: each carries the digest of the one before.`);
}

function anchorFindings(walked: Walked, { file, found, anchors, unreadable }: Anchors): Finding[] {
  const name = path.basename(file);
  const damaged = unreadable.map((line) => unknown(`Line ${line} of ${name} cannot be read.`));
  if (!found || anchors.length === 0)
    return [unknown(`No separate record of the chain’s end was found (${name}).`), ...told(damaged)];
  const wrong = anchors.flatMap((anchor) => {
    const why = whyNotThere(walked, anchor);
    return why ? [notMet(`At ${instant(anchor.at)} the chain ended with entry ${anchor.position} (${name}): ${why}`)] : [];
  });
  if (wrong.length > 0) return [...told(wrong), ...told(damaged)];
  const last = anchors.reduce((one, other) => (other.position > one.position ? other : one));
  const all = `${counted(anchors.length, "end of the chain that was kept apart is", "ends of the chain that were kept apart are")} found in it`;
  return [met(`${all}; the latest is entry ${last.position}, kept at ${instant(last.at)} (${name}).`), ...told(damaged)];
}

function signatureFindings(walked: Walked, signatures: readonly SignatureEnd[]): Finding[] {
  const damaged = signatures
    .filter(({ readable }) => !readable)
    .map(({ position }) => unknown(`What signature ${position} says of the chain cannot be read.`));
  const naming = signatures.flatMap(({ position, at, chainEnd }) => (chainEnd ? [{ position, at, chainEnd }] : []));
  const wrong = naming.flatMap(({ position, at, chainEnd }) => {
    const why = whyNotThere(walked, chainEnd);
    return why
      ? [notMet(`Signature ${position}, of ${instant(at)}, names entry ${chainEnd.position} as the chain’s end: ${why}`)]
      : [];
  });
  if (wrong.length > 0) return [...told(wrong), ...told(damaged)];
  if (naming.length === 0) return told(damaged);
  const all = counted(
    naming.length,
    "signature that names an end of the chain names",
    "signatures that name an end of the chain name",
  );
  return [met(`${all} one that it has.`), ...told(damaged)];
}

function whyNotThere({ digests, head }: Walked, { position, digest }: ChainEnd): string | null {
  // Before the first entry there is an end too.
  if (position === 0) return digest === beginning ? null : "there is no such entry.";
  const last = head?.position ?? 0;
  if (position > last)
    return last === 0
      ? "the record has no entry now. Entries were taken away."
      : `it ends with entry ${last} now. Entries were taken away at its end.`;
  const there = digests.get(position);
  if (there === undefined) return "that entry is missing now.";
  return there === digest ? null : "another entry stands there now. The record was written anew, from there or from before it.";
}

const clockFindings = ({ clockSetBack }: Walked): Finding[] =>
  told(
    clockSetBack.map(({ position, from, to }) =>
      unknown(`The clock was set back at entry ${position}: from ${instant(from)} to ${instant(to)}.`),
    ),
  );

function told(findings: readonly Finding[]): Finding[] {
  const [first] = findings;
  if (!first || findings.length <= mostTold) return [...findings];
  return [
    ...findings.slice(0, mostTold),
    { state: first.state, words: `The same at ${findings.length - mostTold} more places.` },
  ];
}

const met = (words: string): Finding => ({ state: "met", words });
const notMet = (words: string): Finding => ({ state: "not met", words });
const unknown = (words: string): Finding => ({ state: "unknown", words });

const counted = (count: number, one: string, many: string): string => `${count} ${count === 1 ? one : many}`;

/** @example instant("2026-10-05T10:00:00.000Z") // => "2026-10-05 10:00:00 UTC" */
const instant = (at: string): string => (/^[\d-]{10}T[\d:]{8}/.test(at) ? `${at.slice(0, 10)} ${at.slice(11, 19)} UTC` : at);
