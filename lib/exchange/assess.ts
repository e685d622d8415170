/**
 * `npm run --silent assess -- FILE [--as-of ISO]`: prints the assessment of a bundle as JSON.
 *
 * Exit status: 0 ready, with or without conditions; 3 not ready or not enough evidence; 4 must not be released;
 * 2 bad input, with its path and the reason on the error output.
 */
import { assessCommand } from "./assess-command";
import { print } from "./said";

print(assessCommand(process.argv.slice(2)));
