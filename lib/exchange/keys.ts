/**
 * `npm run --silent keys -- public` prints the clinic's public keys as a JSON Web Key Set, for whoever is to check releases;
 * `npm run keys -- rotate` makes a new key to sign with and keeps of the old one only the public half.
 * The keys lie beside the database that DATABASE_URL names.
 */
import { keysCommand } from "./keys-command";
import { print } from "./said";

print(await keysCommand(process.argv.slice(2)));
