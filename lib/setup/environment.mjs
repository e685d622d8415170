// @ts-check
// What can be set from outside, all of it optional:
//
//   PORT                where the pages are served; 3000
//   HOST                the network address to listen on; 127.0.0.1, which only this machine can reach
//   BETTER_AUTH_URL     the address that people type, where it is not http://localhost:PORT (behind a proxy with https)
//   BETTER_AUTH_SECRET  what sessions are signed with; made at the first run and kept in data/secret
//   DATABASE_URL        file: and a path; data/clinic.db for `npm start`, always data/demo.db for `npm run demo`
//   CHROMIUM            the browser that `npm test` uses; /usr/bin/chromium-headless-shell, else /usr/bin/chromium
//
// The program itself reads DATABASE_URL, BETTER_AUTH_URL and BETTER_AUTH_SECRET, and one more that only tests set:
//
//   FITTING_LEDGER_CLOCK_OFFSET_MS  by how much its time is ahead of the machine's; refused where the store is not invented
import { existsSync } from "node:fs";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { Stop } from "./stop.mjs";

/** The folder that holds package.json. */
export const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");

export const dataFolder = path.join(root, "data");

/** Chromium without its windows takes half the time of the whole one; Debian has both. */
const headlessShell = "/usr/bin/chromium-headless-shell";
const browsers = [headlessShell, "/usr/bin/chromium"];

export const browserFile = process.env.CHROMIUM ?? browsers.find((file) => existsSync(file)) ?? headlessShell;

/**
 * @typedef {{ port: number, host: string, address: string }} Place where the server listens, and what people type to reach it
 */

/**
 * @returns {Place}
 * @throws {Stop} where PORT is no port
 */
export function wantedPlace() {
  const port = Number(process.env.PORT ?? 3000);
  if (!Number.isInteger(port) || port < 1 || port > 65535) {
    throw new Stop(`PORT is "${process.env.PORT}", which is not a port.`, "Use a whole number from 1 to 65535, as in PORT=3100.");
  }
  const host = process.env.HOST ?? "127.0.0.1";
  return { port, host, address: process.env.BETTER_AUTH_URL ?? `http://${hostToType(host)}:${port}` };
}

/** @param {string} host */
function hostToType(host) {
  if (["127.0.0.1", "::1", "0.0.0.0", "::"].includes(host)) return "localhost";
  return host.includes(":") ? `[${host}]` : host;
}

/**
 * @param {string} databaseUrl `file:` and a path
 * @returns {string} the absolute path
 * @throws {Stop} where it is not a file
 */
export function databasePath(databaseUrl) {
  const file = /^file:(?:\/\/)?([^?]+)/.exec(databaseUrl)?.[1];
  if (file === undefined) {
    throw new Stop(
      `DATABASE_URL is "${databaseUrl}", which is not a file.`,
      "Set it to file: and a path, as in DATABASE_URL=file:/srv/clinic.db",
    );
  }
  return path.resolve(file);
}
