/**
 * `npm run bench`: speed as ratios, each measured against a named baseline in the same run. Not part of `npm test`.
 * Exit status 1 where a bar is missed.
 */
import { cpus } from "node:os";
import { assessmentWithinBar } from "./assessment";
import { replayWithinBar } from "./replay";

console.log(`Node ${process.version}, ${cpus().length} cores`);
const within = [await assessmentWithinBar(), await replayWithinBar()];
process.exitCode = within.every(Boolean) ? 0 : 1;
