// @ts-check
// The npm packages: there, at the versions of package-lock.json, and loadable by this Node.
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { root } from "./environment.mjs";
import { isInstalled, lastLines, run } from "./run.mjs";
import { say, step } from "./say.mjs";
import { Stop } from "./stop.mjs";
import { installSystemPackages, mayInstall } from "./system-packages.mjs";

/**
 * Installs what is missing.
 *
 * @throws {Stop} where npm fails
 */
export async function ensurePackages() {
  if (!installedAsLocked()) {
    await ensureCompiler();
    await step("Packages, by npm ci (some minutes where SQLite must be compiled)", () =>
      npm(["ci", "--include=dev"], "installed"),
    );
  } else if (!(await storeLoads())) {
    await ensureCompiler();
    await step("The store's native module, for this Node", () => npm(["rebuild", "better-sqlite3"], "built"));
  } else {
    say("  Packages … up to date");
  }
}

/** Whether node_modules holds every package at the version that package-lock.json names. */
function installedAsLocked() {
  const record = path.join(root, "node_modules/.package-lock.json");
  if (!existsSync(record)) return false;
  const installed = packagesIn(record);
  return Object.entries(packagesIn(path.join(root, "package-lock.json"))).every(
    // An optional one may be for another system.
    ([folder, { version, optional }]) => folder === "" || optional === true || installed[folder]?.version === version,
  );
}

/**
 * @param {string} file
 * @returns {Record<string, { version?: string, optional?: boolean }>} by folder; "" is this program
 */
function packagesIn(file) {
  return JSON.parse(readFileSync(file, "utf8")).packages ?? {};
}

async function storeLoads() {
  const { code } = await run(process.execPath, ["-e", "new (require('better-sqlite3'))(':memory:')"]);
  return code === 0;
}

/** SQLite's native module is compiled where no ready one can be fetched. */
async function ensureCompiler() {
  if (missingTools().length === 0 || !mayInstall()) return;
  await step("Tools to compile SQLite, by apt-get", async () => {
    await installSystemPackages(["python3", "make", "g++"]);
    return "installed";
  });
}

function missingTools() {
  return ["python3", "make", "g++"].filter((tool) => !isInstalled(tool));
}

/**
 * @param {string[]} words
 * @param {string} outcome
 */
async function npm(words, outcome) {
  const { code, output } = await run("npm", [...words, "--no-audit", "--no-fund"], { env: { JOBS: "max", ...nodeHeaders() } });
  if (code === 0) return outcome;
  const missing = missingTools();
  throw new Stop(
    `npm ${words[0]} failed:\n${lastLines(withoutTraces(output))}`,
    missing.length > 0
      ? `Compiling SQLite needs ${missing.join(", ")}. On Debian, as root: apt-get install -y python3 make g++. Then run the command again.`
      : "The lines above say why; most often the npm registry cannot be reached. Then run the command again.",
  );
}

/**
 * npm prints its own stack before it says what is wrong.
 *
 * @param {string} output
 */
function withoutTraces(output) {
  return output
    .split("\n")
    .filter(
      (line) => !/^npm warn|^npm error\s*$|^npm error\s+(gyp ERR! stack at |at |errno|syscall|address|port|type|\})/.test(line),
    )
    .join("\n");
}

/**
 * Compiling needs Node's headers. Where they lie beside this Node, they need not be fetched.
 *
 * @returns {Record<string, string>}
 */
function nodeHeaders() {
  const folder = path.resolve(path.dirname(process.execPath), "..");
  const versionFile = path.join(folder, "include/node/node_version.h");
  if (!existsSync(versionFile)) return {};
  const text = readFileSync(versionFile, "utf8");
  const [major, minor, patch] = ["MAJOR", "MINOR", "PATCH"].map(
    (part) => new RegExp(`NODE_${part}_VERSION (\\d+)`).exec(text)?.[1],
  );
  return `${major}.${minor}.${patch}` === process.versions.node ? { npm_config_nodedir: folder } : {};
}
