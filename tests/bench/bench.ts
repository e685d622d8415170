/**
 * `npm run bench`: speed as ratios, each measured against a named baseline in the same run. Not part of `npm test`.
 * All of it, or what is named: `npm run bench -- science`. Exit status 1 where a bar is missed.
 */
import { cpus } from "node:os";

const benches = {
  science: async () => {
    const { assessmentWithinBar } = await import("./assessment");
    const { replayWithinBar } = await import("./replay");
    return [await assessmentWithinBar(), await replayWithinBar()];
  },
  "check-in": async () => (await import("./check-in")).checkInWithinBar(),
  chain: async () => [await (await import("./chain")).chainWithinBar()],
  press: async () => [await (await import("./press")).pressWithinBar()],
  series: async () => (await import("./series")).seriesWithinBars(),
  sheet: async () => (await import("./sheet")).sheetWithinBar(),
  typing: async () => [await (await import("./typing")).typingWithinBar()],
};

const asked = process.argv.slice(2);
for (const name of asked)
  if (!(name in benches)) throw new Error(`no bench ${name}; there are ${Object.keys(benches).join(", ")}`);
console.log(`Node ${process.version}, ${cpus().length} cores`);
const within: boolean[] = [];
for (const [name, run] of Object.entries(benches)) if (asked.length === 0 || asked.includes(name)) within.push(...(await run()));
process.exitCode = within.every(Boolean) ? 0 : 1;
