// @ts-check
// The server of a built site, as a child process.
import { spawn } from "node:child_process";
import { once } from "node:events";
import net from "node:net";
import { root } from "./environment.mjs";
import { endWithUs, lastLines, scriptPath } from "./run.mjs";
import { Stop } from "./stop.mjs";

const longestStartMs = 60_000;
const longestEndMs = 8_000;

/**
 * @typedef {import("./environment.mjs").Place} Place
 * @typedef {{ place: Place, file: string, secret: string, clockOffsetMs?: number, onOutput?: (text: string) => void }} Wanted
 *   file: the database; clockOffsetMs: as in environment.mjs, where it is not to be the environment's; onOutput: what the server says once it is ready
 * @typedef {{ address: string, ended: Promise<number | null>, stop(): Promise<void>, kill(): Promise<void> }} RunningServer
 *   ended: its exit code, whenever that comes; kill: at once and unasked, as when the power fails
 */

/**
 * Starts the server and waits until it answers.
 *
 * @param {Wanted} wanted
 * @returns {Promise<RunningServer>}
 * @throws {Stop} where it does not start
 */
export async function startServer({ place, file, secret, clockOffsetMs, onOutput = () => {} }) {
  const words = [scriptPath("next"), "start", "-H", place.host, "-p", String(place.port)];
  const child = spawn(process.execPath, words, {
    cwd: root,
    env: {
      ...process.env,
      NODE_ENV: "production",
      NEXT_TELEMETRY_DISABLED: "1",
      DATABASE_URL: `file:${file}`,
      BETTER_AUTH_SECRET: secret,
      BETTER_AUTH_URL: place.address,
      ...(clockOffsetMs === undefined ? {} : { FITTING_LEDGER_CLOCK_OFFSET_MS: String(clockOffsetMs) }),
    },
    stdio: ["ignore", "pipe", "pipe"],
  });
  endWithUs(child);
  let before = "";
  let ready = false;
  for (const stream of [child.stdout, child.stderr]) {
    stream.on("data", (chunk) => {
      if (ready) onOutput(String(chunk));
      else before += chunk;
    });
  }
  const ended = once(child, "exit").then(([code]) => code);

  if (!(await answers(place, ended))) {
    child.kill("SIGKILL");
    if (before.includes("EADDRINUSE")) throw portInUse(place);
    throw new Stop(`The server did not start:\n${lastLines(before)}`, "The lines above say why.");
  }
  ready = true;

  const stop = async () => {
    const tooLong = setTimeout(() => child.kill("SIGKILL"), longestEndMs);
    child.kill("SIGTERM");
    await ended;
    clearTimeout(tooLong);
  };
  const kill = async () => {
    child.kill("SIGKILL");
    await ended;
  };
  return { address: place.address, ended, stop, kill };
}

/**
 * @param {Place} place
 * @throws {Stop} where something else listens there
 */
export async function requireFreePort(place) {
  const server = net.createServer();
  try {
    await listen(server, place.port, place.host);
  } catch (error) {
    const code = error instanceof Error && "code" in error ? error.code : "";
    if (code === "EADDRINUSE") throw portInUse(place);
    if (code === "EACCES")
      throw new Stop(`This user may not listen on port ${place.port}.`, "Choose one above 1023, as in PORT=3100 npm start.");
    if (code === "EADDRNOTAVAIL" || code === "ENOTFOUND") {
      throw new Stop(
        `HOST is "${place.host}", which is no address of this machine.`,
        "Leave HOST out, or use 0.0.0.0 to listen on every address.",
      );
    }
    throw error;
  }
  server.close();
}

/** @returns {Promise<number>} a port of this machine that nobody listens on */
export async function freePort() {
  const server = net.createServer();
  await listen(server, 0, "127.0.0.1");
  const address = server.address();
  server.close();
  if (address === null || typeof address === "string") throw new Error("a TCP server has a port");
  return address.port;
}

/** @param {Place} place */
function portInUse({ port }) {
  return new Stop(
    `Port ${port} is in use by another program.`,
    `Stop that program, or choose another port: PORT=${port + 1} and the command (PORT=${port + 1} npm run demo).`,
  );
}

/**
 * @param {net.Server} server
 * @param {number} port
 * @param {string} host
 */
async function listen(server, port, host) {
  server.listen(port, host);
  await once(server, "listening");
}

/**
 * @param {Place} place
 * @param {Promise<unknown>} ended
 * @returns {Promise<boolean>} false where the server ends first, or takes too long
 */
async function answers({ host, port }, ended) {
  let over = false;
  ended.then(() => (over = true));
  const giveUpAt = performance.now() + longestStartMs;
  const reachable = host === "0.0.0.0" || host === "::" ? "127.0.0.1" : host;
  const url = `http://${reachable.includes(":") ? `[${reachable}]` : reachable}:${port}/_next/static/`;
  while (!over && performance.now() < giveUpAt) {
    try {
      await fetch(url, { method: "HEAD", redirect: "manual" });
      return !over;
    } catch {
      await new Promise((resolve) => setTimeout(resolve, 50));
    }
  }
  return false;
}
