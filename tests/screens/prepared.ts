// Where the run's common files lie: made by prepare.ts and sign-in.setup.ts, copied or read by every spec.
import path from "node:path";
import { demoAccounts } from "../../prisma/invented-clinic/accounts";

/** Sessions in the prepared database are signed with it, so every server of the run has the same. */
export const secret = "a secret of the browser tests only";

/**
 * Every run takes place on this day, whatever the machine's clock says: the loader, the servers, the browsers and the tests
 * have one offset to the real clock. It begins at ten in the morning of a Thursday in Lisbon, the day of the unit tests.
 */
const begin = new Date("2026-10-08T09:00:00Z");

const offsetVariable = "FITTING_LEDGER_SCREENS_CLOCK_OFFSET_MS";

/** Called once, before anything is loaded. */
export function fixDay(): void {
  process.env[offsetVariable] = String(begin.getTime() - Date.now());
}

export function clockOffsetMs(): number {
  const offset = process.env[offsetVariable];
  if (offset === undefined) throw new Error("prepare.ts has not run");
  return Number(offset);
}

/** Now, as the clinic and the browsers have it, in milliseconds since 1970. */
export const clinicNow = (): number => Date.now() + clockOffsetMs();

/** Moves a page's clock; given to it before its own scripts. */
export function moveClock(offsetMs: number): void {
  const RealDate = Date;
  class MovedDate extends RealDate {
    constructor(...parts: [] | [number | string | Date]) {
      // `new Date()` and `new Date(something)`; the parts of a local time go through as they are.
      if (parts.length === 0) super(RealDate.now() + offsetMs);
      else super(...parts);
    }
    static override now(): number {
      return RealDate.now() + offsetMs;
    }
  }
  globalThis.Date = MovedDate as DateConstructor; // called without `new` it throws, and no page does so
}

const folderVariable = "FITTING_LEDGER_SCREENS_FOLDER";

export function setPreparedFolder(folder: string): void {
  process.env[folderVariable] = folder;
}

export const inventedClinic = () => prepared("invented.db");
export const emptyClinic = () => prepared("empty.db");
export const signedInState = (role: string) => prepared(`signed-in-${role}.json`);

/** The first account of each role signs in once for the whole run. */
export const accountsThatSignIn = demoAccounts.filter(
  (account, position) => demoAccounts.findIndex(({ role }) => role === account.role) === position,
);

function prepared(name: string): string {
  const folder = process.env[folderVariable];
  if (folder === undefined) throw new Error("prepare.ts has not run");
  return path.join(folder, name);
}
