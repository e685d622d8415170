// Where the run's common files lie: made by prepare.ts and sign-in.setup.ts, copied or read by every spec.
import path from "node:path";
import { demoAccounts } from "../../prisma/invented-clinic/accounts";

/** Sessions in the prepared database are signed with it, so every server of the run has the same. */
export const secret = "a secret of the browser tests only";

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
