// @ts-check
// Runs other programs: packages' own command lines, npm, apt-get.
import { spawn } from "node:child_process";
import { existsSync } from "node:fs";
import path from "node:path";
import { root } from "./environment.mjs";

/** The command lines of packages, started with this same Node and without a shell. */
const scripts = {
  biome: "@biomejs/biome/bin/biome",
  depcruise: "dependency-cruiser/bin/dependency-cruise.mjs",
  next: "next/dist/bin/next",
  playwright: "@playwright/test/cli.js",
  prisma: "prisma/build/index.js",
  tsc: "typescript/bin/tsc",
  vitest: "vitest/vitest.mjs",
};

/**
 * @typedef {{ env?: Record<string, string>, live?: boolean }} Manner
 *   env: added to this process's own; live: show the output as it comes, instead of collecting it
 * @typedef {{ code: number, output: string }} Ended code is 1 where a signal ended it or it could not start
 */

/** @type {Set<import("node:child_process").ChildProcess>} */
const running = new Set();

/**
 * @param {string} command
 * @param {string[]} words
 * @param {Manner} [manner]
 * @returns {Promise<Ended>}
 */
export function run(command, words, { env = {}, live = false } = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, words, {
      cwd: root,
      env: { ...process.env, NEXT_TELEMETRY_DISABLED: "1", ...env },
      stdio: ["ignore", live ? "inherit" : "pipe", live ? "inherit" : "pipe"],
    });
    let output = "";
    endWithUs(child);
    for (const stream of [child.stdout, child.stderr]) {
      stream?.on("data", (chunk) => {
        output += chunk;
      });
    }
    child.on("error", (error) => resolve({ code: 1, output: error.message }));
    child.on("close", (code) => resolve({ code: code ?? 1, output }));
  });
}

/**
 * @param {keyof typeof scripts} name
 * @param {string[]} words
 * @param {Manner} [manner]
 */
export function runScript(name, words, manner) {
  return run(process.execPath, [scriptPath(name), ...words], manner);
}

/** @param {keyof typeof scripts} name */
export function scriptPath(name) {
  return path.join(root, "node_modules", scripts[name]);
}

/**
 * Runs a TypeScript file of ours. The condition lets it load modules that are marked as the server's.
 *
 * @param {string} file relative to the root
 * @param {Manner & { words?: string[] }} [manner] words: what follows the file on the command line
 */
export function runTypeScript(file, { words = [], ...manner } = {}) {
  return run(process.execPath, ["--conditions=react-server", "--import", "tsx", path.join(root, file), ...words], manner);
}

/** @param {import("node:child_process").ChildProcess} child ended by the signal that ends this process */
export function endWithUs(child) {
  running.add(child);
  child.on("exit", () => running.delete(child));
}

/** @param {NodeJS.Signals} signal */
export function stopChildren(signal) {
  for (const child of running) child.kill(signal);
}

/** @param {string} command */
export function isInstalled(command) {
  return (process.env.PATH ?? "").split(path.delimiter).some((folder) => existsSync(path.join(folder, command)));
}

/**
 * @param {string} output
 * @param {number} [count]
 */
export function lastLines(output, count = 15) {
  return output.trimEnd().split("\n").slice(-count).join("\n");
}
