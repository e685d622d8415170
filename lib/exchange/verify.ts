/**
 * `npm run --silent verify -- FILE --key KEYS`: checks an exported release with nothing but the file and the clinic's public
 * keys (`npm run --silent keys -- public`), and says in words what holds and what does not.
 *
 * `npm run --silent verify -- --record [FILE]` checks the record of a store instead (verify-record-command.ts).
 *
 * Exit status: 0 holds; 3 nothing speaks against it, but something could not be checked; 4 does not hold; 2 bad input.
 */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { z } from "zod";
import { canonicalJson } from "@/lib/trail/chain";
import { type PublicKey, parsePublicKeys } from "@/lib/trail/keys";
import { pathAsGiven, reasonOf } from "./path-as-given";
import { ReleaseFile } from "./release-file";
import { verifyRecordCommand } from "./verify-record-command";
import { type ReleaseCheck, verifyRelease } from "./verify-release";

const usage = "Usage: npm run --silent verify -- FILE --key KEYS";
const exitStatus: Record<ReleaseCheck["verdict"], number> = { holds: 0, "cannot tell": 3, "does not hold": 4 };
const badInput = 2;

class BadInput extends Error {}

const [first, ...rest] = process.argv.slice(2);
process.exitCode = first === "--record" ? await verifyRecordCommand(rest) : await verifyReleaseCommand();

/** @returns the exit status */
async function verifyReleaseCommand(): Promise<number> {
  try {
    const { file, keyFile } = asked();
    const text = read(file);
    const release = parsed(file, () => ReleaseFile.parse(JSON.parse(text)));
    const keys: PublicKey[] = keyFile === undefined ? [] : parsed(keyFile, () => parsePublicKeys(read(keyFile)));
    const { verdict, about, findings } = await verifyRelease(release, keys);
    const words = { met: "holds", "not met": "DOES NOT HOLD", unknown: "cannot tell" };
    const lines = [
      about,
      ...findings.map(({ state, words: said }) => `  ${words[state]}: ${said}`),
      ...(canonicalJson(JSON.parse(text)) === text.trim()
        ? []
        : ["  note: the file was written anew by another program. What is checked is what a program reads in it."]),
      `The release ${verdict === "cannot tell" ? "cannot be told from a false one by what was given here" : verdict}.`,
    ];
    process.stdout.write(`${lines.join("\n")}\n`);
    return exitStatus[verdict];
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    process.stderr.write(`${error.message}\n`);
    return badInput;
  }
}

function asked(): { file: string; keyFile: string | undefined } {
  try {
    const { values, positionals } = parseArgs({ allowPositionals: true, options: { key: { type: "string" } } });
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new Error("one file is expected");
    return { file, keyFile: values.key };
  } catch (error) {
    throw new BadInput(`${reasonOf(error)}. ${usage}`);
  }
}

function read(file: string): string {
  try {
    return readFileSync(pathAsGiven(file, "verify"), "utf8");
  } catch (error) {
    throw new BadInput(`${file}: cannot be read (${reasonOf(error)}). ${usage}`);
  }
}

function parsed<Value>(file: string, parse: () => Value): Value {
  try {
    return parse();
  } catch (error) {
    if (error instanceof BadInput) throw error;
    const [issue] = error instanceof z.ZodError ? error.issues : [];
    throw new BadInput(`${file}: ${issue ? `${issue.path.join(".") || "the file"}: ${issue.message}` : reasonOf(error)}`);
  }
}
