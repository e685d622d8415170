/** What `npm run assess` does (assess.ts): reads the bundle, judges it, and gives what is to be printed. */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import type { Decision } from "@/lib/fit/assessment";
import { Bundle } from "@/lib/fit/bundle";
import { FitInputError } from "@/lib/fit/errors";
import { limitsWith } from "@/lib/fit/limits";
import { parseBundle } from "@/lib/fit/parse-bundle";
import { assessReadiness } from "@/lib/fit/readiness";
import { pathAsGiven, reasonOf } from "./path-as-given";
import type { Said } from "./said";

const usage = "Usage: npm run --silent assess -- FILE [--as-of ISO], as --as-of 2026-10-08T09:00:00Z";

const exitStatus: Readonly<Record<Decision, number>> = {
  ready: 0,
  "ready with conditions": 0,
  "not ready": 3,
  "not enough evidence": 3,
  "must not be released": 4,
};
const badInput = 2;

/** @param argv what stands behind the command's name */
export function assessCommand(argv: readonly string[]): Said {
  try {
    const { file, asOf } = asked(argv);
    const bundle = parseBundle(read(file));
    const assessment = assessReadiness(bundle, limitsWith(bundle.ownLimits ?? {}), asOf);
    return { status: exitStatus[assessment.decision], said: `${JSON.stringify(assessment, null, 2)}\n`, complained: "" };
  } catch (error) {
    if (!(error instanceof FitInputError)) throw error;
    return { status: badInput, said: "", complained: `${error.message}\n` };
  }
}

function asked(argv: readonly string[]): { file: string; asOf: string | undefined } {
  const { values, positionals } = parsed(argv);
  const [file, ...more] = positionals;
  const [asOf, ...others] = values["as-of"] ?? [];
  if (file === undefined || more.length > 0) throw new FitInputError("FILE", `expected one file. ${usage}`);
  if (others.length > 0) throw new FitInputError("--as-of", `expected once. ${usage}`);
  if (asOf !== undefined && !Bundle.shape.asOf.safeParse(asOf).success)
    throw new FitInputError("--as-of", "expected an instant with its offset, as 2026-10-08T09:00:00Z");
  return { file, asOf };
}

function parsed(argv: readonly string[]) {
  try {
    return parseArgs({ args: [...argv], allowPositionals: true, options: { "as-of": { type: "string", multiple: true } } });
  } catch (error) {
    throw new FitInputError("", `${reasonOf(error)}. ${usage}`);
  }
}

function read(file: string): unknown {
  const text = readText(pathAsGiven(file, "assess"));
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new FitInputError(file, `not JSON: ${reasonOf(error)}`);
  }
}

function readText(file: string): string {
  try {
    return readFileSync(file, "utf8");
  } catch (error) {
    throw new FitInputError(file, `cannot be read: ${reasonOf(error)}`);
  }
}
