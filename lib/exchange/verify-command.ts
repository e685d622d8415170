/** What `npm run verify -- FILE --key KEYS` does (verify.ts): reads the two files, checks, and says it in words. */
import { readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { z } from "zod";
import { canonicalJson } from "@/lib/trail/chain";
import { type PublicKey, parsePublicKeys } from "@/lib/trail/keys";
import { pathAsGiven, reasonOf } from "./path-as-given";
import { ReleaseFile } from "./release-file";
import type { Said } from "./said";
import { isPdf, verifySheet } from "./sealed-pdf";
import { type ReleaseCheck, verifyRelease } from "./verify-release";

const usage = "Usage: npm run --silent verify -- FILE --key KEYS";
const exitStatus: Record<ReleaseCheck["verdict"], number> = { holds: 0, "cannot tell": 3, "does not hold": 4 };
const badInput = 2;

class BadInput extends Error {}

/** @param argv what stands behind the command's name */
export async function verifyCommand(argv: readonly string[]): Promise<Said> {
  try {
    const { file, keyFile } = asked(argv);
    const bytes = read(file);
    const keys: PublicKey[] = keyFile === undefined ? [] : parsed(keyFile, () => parsePublicKeys(read(keyFile).toString("utf8")));
    const isSheet = isPdf(bytes);
    const text = bytes.toString("utf8");
    const { verdict, about, findings } = isSheet
      ? await verifySheet(bytes, keys)
      : await verifyRelease(
          parsed(file, () => ReleaseFile.parse(JSON.parse(text))),
          keys,
        );
    const words = { met: "holds", "not met": "DOES NOT HOLD", unknown: "cannot tell" };
    const lines = [
      about,
      ...findings.map(({ state, words: said }) => `  ${words[state]}: ${said}`),
      ...(isSheet || canonicalJson(JSON.parse(text)) === text.trim()
        ? []
        : ["  note: the file was written anew by another program. What is checked is what a program reads in it."]),
      `The ${isSheet ? "sheet" : "release"} ${verdict === "cannot tell" ? "cannot be told from a false one by what was given here" : verdict}.`,
    ];
    return { status: exitStatus[verdict], said: `${lines.join("\n")}\n`, complained: "" };
  } catch (error) {
    if (!(error instanceof BadInput)) throw error;
    return { status: badInput, said: "", complained: `${error.message}\n` };
  }
}

function asked(argv: readonly string[]): { file: string; keyFile: string | undefined } {
  try {
    const { values, positionals } = parseArgs({ args: [...argv], allowPositionals: true, options: { key: { type: "string" } } });
    const [file, ...more] = positionals;
    if (file === undefined || more.length > 0) throw new Error("one file is expected");
    return { file, keyFile: values.key };
  } catch (error) {
    throw new BadInput(`${reasonOf(error)}. ${usage}`);
  }
}

function read(file: string): Buffer {
  try {
    return readFileSync(pathAsGiven(file, "verify"));
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
