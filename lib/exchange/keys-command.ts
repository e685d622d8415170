/** What `npm run keys` does (keys.ts): gives the clinic's public keys, or makes a new key to sign with. */
import { existsSync } from "node:fs";
import { inTransaction } from "@/lib/records/command";
import { closeDatabase } from "@/lib/records/database";
import { databaseFileNamed, keysBeside } from "@/lib/trail/beside-database";
import { publicKeys, rotateKeys, signingKey } from "@/lib/trail/keys";
import type { Said } from "./said";

/** Whoever may start this command on the server. */
const runner = { id: "server", name: "whoever runs the server", role: "administrator" } as const;

const usage = "Usage: npm run --silent keys -- public, or npm run keys -- rotate";

/** @param argv what stands behind the command's name */
export async function keysCommand([what, ...more]: readonly string[]): Promise<Said> {
  const database = databaseFileNamed();
  const file = keysBeside(database);
  if (more.length > 0 || (what !== "public" && what !== "rotate")) return refused(usage);
  if (!existsSync(database))
    return refused(`There is no database at ${database}. Name it in DATABASE_URL, as file:data/clinic.db`);
  if (what === "public") {
    await signingKey(file, new Date());
    return said(`${JSON.stringify({ keys: publicKeys(file) }, null, 1)}\n`);
  }
  const { kid, from } = await rotateKeys(file, new Date());
  await inTransaction(runner, (store) => store.note({ action: "made a new key to sign with", kind: "key", id: kid }));
  await closeDatabase();
  return said(
    `The clinic signs with the key ${kid} from ${from} on.\nGive out the public keys anew: npm run --silent keys -- public\n`,
  );
}

const said = (text: string): Said => ({ status: 0, said: text, complained: "" });
const refused = (why: string): Said => ({ status: 2, said: "", complained: `${why}\n` });
