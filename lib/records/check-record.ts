/** Whether a record can be believed: its chain, the ends of it that were kept apart, and those that signatures name. */
import { readAnchors } from "@/lib/trail/anchors";
import { keysBeside } from "@/lib/trail/beside-database";
import { publicKeys } from "@/lib/trail/keys";
import { type Walked, walkChain } from "@/lib/trail/walk-chain";
import { lockFindings } from "./lock-findings";
import { withRecordFile } from "./record-file";
import { type Finding, findingsOf } from "./record-findings";
import { signedFindings } from "./signed-findings";

export interface RecordCheck {
  /** Whether nothing speaks against the record. What is not known does not speak against it. */
  holds: boolean;
  entries: number;
  head: Walked["head"];
  findings: readonly Finding[];
  /** Where the chain first breaks. */
  position?: number;
}

export type Progress = (done: number, total: number) => void;

/** @throws where the file cannot be read as a store of records */
export async function checkRecord(file: string, progress?: Progress): Promise<RecordCheck> {
  // Read before the chain is: what is kept meanwhile may be the end of a longer one.
  const anchors = readAnchors(file);
  return withRecordFile(file, async ({ count, pages, jsonOf, signatures, connection }) => {
    const ends = [...anchors.anchors, ...signatures.flatMap(({ chainEnd }) => chainEnd ?? [])];
    const wanted = new Set(ends.map(({ position }) => position));
    const walked = await walkChain(pages, { total: count, wanted, jsonOf, progress });
    const findings = [
      ...findingsOf(walked, { anchors, signatures }),
      ...(await signedFindings(connection, publicKeys(keysBeside(file)))),
      ...lockFindings(connection),
    ];
    return {
      holds: findings.every(({ state }) => state !== "not met"),
      entries: walked.entries,
      head: walked.head,
      findings,
      ...(walked.broken ? { position: walked.broken.position } : {}),
    };
  });
}
