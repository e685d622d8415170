// @ts-check
// What a command says while it works, and how it ends.
import { stopChildren } from "./run.mjs";
import { Stop } from "./stop.mjs";

/** @type {NodeJS.WritableStream} */
let stream = process.stdout;

/** For a command whose standard output is its result: what it says while it works goes to standard error. */
export function sayOnStandardError() {
  stream = process.stderr;
}

/** @param {string} line */
export const say = (line) => void stream.write(`${line}\n`);

/**
 * Does one step and says on one line what came of it and how long it took.
 *
 * @param {string} title
 * @param {() => Promise<string>} work gives the outcome in a few words
 * @param {{ beside?: boolean }} [manner] beside: others run at the same time, so that its line comes whole at its end
 */
export async function step(title, work, { beside = false } = {}) {
  const begun = performance.now();
  const head = `  ${title} … `;
  if (!beside) stream.write(head);
  const end = (/** @type {string} */ outcome) => say(`${beside ? head : ""}${outcome} (${secondsSince(begun)})`);
  try {
    end(await work());
  } catch (error) {
    end("failed");
    throw error;
  }
}

/** @param {number} begun by `performance.now()` */
export function secondsSince(begun) {
  return `${((performance.now() - begun) / 1000).toFixed(1)} s`;
}

/**
 * Runs a whole command: a `Stop` becomes two sentences, anything else is a fault and keeps its trace.
 * A signal ends what the command has started, too.
 *
 * @param {() => Promise<number>} work gives the exit code
 */
export async function runCommand(work) {
  for (const signal of /** @type {const} */ (["SIGINT", "SIGTERM"])) process.once(signal, () => endEarly(signal));
  try {
    process.exitCode = await work();
  } catch (error) {
    process.exitCode = 1;
    explain(error);
  }
}

/** @param {unknown} error */
export function explain(error) {
  if (error instanceof Stop) {
    console.error(`\n${error.message}\n${error.remedy}`);
  } else {
    console.error("\nThis is a fault of the program. Please report it with these lines:\n", error);
  }
}

/** @type {(() => Promise<void>) | null} */
let cleanEnd = null;

/**
 * What a signal does from now on, instead of breaking off: the command then ends with exit code 0.
 *
 * @param {() => Promise<void>} work
 */
export function endWith(work) {
  cleanEnd = work;
}

/** @param {"SIGINT" | "SIGTERM"} signal */
async function endEarly(signal) {
  if (cleanEnd !== null) {
    await cleanEnd();
    process.exit(0);
  }
  stopChildren(signal);
  process.exit(signal === "SIGINT" ? 130 : 143);
}
