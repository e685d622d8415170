import path from "node:path";

/**
 * A file that was named on the command line. npm runs a script in the folder of the package; a relative path means the
 * folder in which the person is.
 *
 * @param script as package.json names it
 */
export function pathAsGiven(file: string, script: string): string {
  const from = process.env.npm_lifecycle_event === script ? process.env.INIT_CWD : undefined;
  return path.resolve(from ?? process.cwd(), file);
}

export const reasonOf = (error: unknown): string => (error instanceof Error ? error.message : String(error));
