/** A bundle from parsed JSON, with its references checked. */
import { Bundle } from "./bundle";
import { checkReferences } from "./bundle-references";
import { FitInputError } from "./errors";

/**
 * Reads a bundle from parsed JSON.
 *
 * @throws FitInputError with the path of the first field that is wrong, missing, unknown, or names a record that is not there
 */
export function parseBundle(input: unknown): Bundle {
  const result = Bundle.safeParse(input);
  if (!result.success) {
    const issue = result.error.issues[0];
    if (!issue) throw new FitInputError("", "not a bundle");
    const path = issue.code === "unrecognized_keys" ? [...issue.path, issue.keys[0] ?? ""] : issue.path;
    const expected = issue.code === "unrecognized_keys" ? "unknown field" : issue.message;
    throw new FitInputError(pathOf(path), expected);
  }
  checkReferences(result.data);
  return result.data;
}

const pathOf = (path: readonly PropertyKey[]): string =>
  path.reduce<string>(
    (so, part) => (typeof part === "number" ? `${so}[${part}]` : so === "" ? String(part) : `${so}.${String(part)}`),
    "",
  );
