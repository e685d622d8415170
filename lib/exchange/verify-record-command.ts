/**
 * `npm run --silent verify -- --record [FILE]`: checks the record in a store's file, with the server stopped or running.
 * Without FILE it is the store that DATABASE_URL names, or data/clinic.db.
 *
 * Exit status: 0 the record holds; 4 it does not; 2 it cannot be read, with the reason on the error output.
 */
import { parseArgs } from "node:util";
import { checkRecord, type RecordCheck } from "@/lib/records/check-record";
import { databaseFileNamed } from "@/lib/trail/beside-database";
import { pathAsGiven } from "./path-as-given";

const exitStatus = { holds: 0, cannotRead: 2, doesNotHold: 4 } as const;
const quietMs = 1000;

const marks: Readonly<Record<RecordCheck["findings"][number]["state"], string>> = {
  met: "holds",
  "not met": "DOES NOT HOLD",
  unknown: "not known",
};

/** @returns the exit status */
export async function verifyRecordCommand(argv: readonly string[]): Promise<number> {
  try {
    const file = fileOf(argv);
    const check = await checkRecord(file, progressAfter(quietMs));
    process.stdout.write(`${linesOf(file, check).join("\n")}\n`);
    return check.holds ? exitStatus.holds : exitStatus.doesNotHold;
  } catch (error) {
    process.stderr.write(`The record cannot be read: ${error instanceof Error ? error.message : String(error)}\n`);
    return exitStatus.cannotRead;
  }
}

function fileOf(argv: readonly string[]): string {
  const { positionals } = parseArgs({ args: [...argv], allowPositionals: true, options: {} });
  const [file, ...more] = positionals;
  if (more.length > 0) throw new Error("expected one file.");
  return file === undefined ? databaseFileNamed() : pathAsGiven(file, "verify");
}

function linesOf(file: string, { holds, head, findings }: RecordCheck): string[] {
  return [
    `${file}: ${holds ? "nothing speaks against the record." : "the record does not hold."}`,
    ...findings.map(({ state, words }) => `${marks[state]}: ${words}`),
    ...(head ? [`The last entry is ${head.position}; its digest is ${head.digest}`] : []),
  ];
}

function progressAfter(ms: number) {
  let next = performance.now() + ms;
  return (done: number, total: number) => {
    if (performance.now() < next) return;
    next = performance.now() + ms;
    process.stderr.write(`${done} of ${total} entries\n`);
  };
}
