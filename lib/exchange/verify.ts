/**
 * `npm run --silent verify -- FILE --key KEYS`: checks an exported release with nothing but the file and the clinic's public
 * keys (`npm run --silent keys -- public`), and says in words what holds and what does not. FILE may be the PDF of a sheet.
 *
 * `npm run --silent verify -- --record [FILE]` checks the record of a store instead (verify-record-command.ts).
 *
 * Exit status: 0 holds; 3 nothing speaks against it, but something could not be checked; 4 does not hold; 2 bad input.
 */
import { print } from "./said";
import { verifyCommand } from "./verify-command";
import { verifyRecordCommand } from "./verify-record-command";

const [first, ...rest] = process.argv.slice(2);
if (first === "--record") process.exitCode = await verifyRecordCommand(rest);
else print(await verifyCommand(process.argv.slice(2)));
