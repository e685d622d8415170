/**
 * `npm run --silent keys -- public` prints the clinic's public keys as a JSON Web Key Set, for whoever is to check releases;
 * `npm run keys -- rotate` makes a new key to sign with and keeps of the old one only the public half.
 * The keys lie beside the database that DATABASE_URL names.
 */
import { existsSync } from "node:fs";
import { inTransaction } from "@/lib/records/command";
import { closeDatabase } from "@/lib/records/database";
import { databaseFileNamed, keysBeside } from "@/lib/trail/beside-database";
import { publicKeys, rotateKeys, signingKey } from "@/lib/trail/keys";

/** Whoever may start this command on the server. */
const runner = { id: "server", name: "whoever runs the server", role: "administrator" } as const;

const usage = "Usage: npm run --silent keys -- public, or npm run keys -- rotate";
const [what, ...more] = process.argv.slice(2);
const database = databaseFileNamed();
const file = keysBeside(database);

if (more.length > 0 || (what !== "public" && what !== "rotate")) refuse(usage);
else if (!existsSync(database)) refuse(`There is no database at ${database}. Name it in DATABASE_URL, as file:data/clinic.db`);
else if (what === "public") {
  await signingKey(file, new Date());
  process.stdout.write(`${JSON.stringify({ keys: publicKeys(file) }, null, 1)}\n`);
} else {
  const { kid, from } = await rotateKeys(file, new Date());
  await inTransaction(runner, (store) => store.note({ action: "made a new key to sign with", kind: "key", id: kid }));
  await closeDatabase();
  process.stdout.write(
    `The clinic signs with the key ${kid} from ${from} on.\nGive out the public keys anew: npm run --silent keys -- public\n`,
  );
}

function refuse(why: string): void {
  process.stderr.write(`${why}\n`);
  process.exitCode = 2;
}
