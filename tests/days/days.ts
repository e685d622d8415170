/**
 * `npm run days`: loads the invented clinic into a store on 400 days in a row, on machines in three time zones, and says
 * whether every episode stands the same on all of them. `npm run days -- 2027-01-01 30` takes 30 days from that one on.
 * Exit status 1 where a day tells another story, or cannot be loaded. The last result is in docs/days.md.
 */
import { spawn } from "node:child_process";
import { existsSync, writeFileSync } from "node:fs";
import { createInterface } from "node:readline";
import { dayAfter } from "./day-after";

const [, , firstDay = "2027-12-20", asked = "400"] = process.argv;
const days = Number(asked);
const zones = ["UTC", "America/Chicago", "Pacific/Auckland"];
const share = Math.ceil(days / zones.length);
const begun = performance.now();

/** Every command is synced to disk: in memory that takes a hundredth of the time. */
const inMemory = existsSync("/dev/shm") ? { TMPDIR: "/dev/shm" } : {};

/** How each day stands, as one text to compare. */
const standing = new Map<string, string>();

async function loadIn(zone: string, index: number): Promise<boolean> {
  const count = Math.min(share, days - index * share);
  const words = ["--conditions=react-server", "--import", "tsx", "tests/days/load-days.ts"];
  const child = spawn(process.execPath, [...words, dayAfter(firstDay, index * share), String(Math.max(0, count))], {
    env: { ...process.env, TZ: zone, ...inMemory },
    stdio: ["ignore", "pipe", "inherit"],
  });
  for await (const line of createInterface({ input: child.stdout })) {
    const { day, outcomes } = JSON.parse(line);
    standing.set(day, JSON.stringify(outcomes));
    if (standing.size % 20 === 0) console.log(`  ${standing.size} of ${days} days`);
  }
  return child.exitCode === 0 || (await new Promise<number | null>((resolve) => child.once("exit", resolve))) === 0;
}

const allLoaded = (await Promise.all(zones.map(loadIn))).every(Boolean) && standing.size === days;
const stories = new Set(standing.values());
const minutes = ((performance.now() - begun) / 60_000).toFixed(0);
const found =
  allLoaded && stories.size === 1
    ? `Every one of ${JSON.parse([...stories][0] ?? "[]").length} episodes has the same stage, next step and decision on all ${days} days.`
    : `**Not the same:** ${standing.size} of ${days} days could be loaded, and they tell ${stories.size} stories.`;
const text = `# The invented clinic on ${days} days

\`npm run days\`, on ${new Date().toISOString().slice(0, 10)}: the store was loaded on ${days} days in a row, ${firstDay} to ${dayAfter(firstDay, days - 1)}, on machines in ${zones.join(", ")}, a third of the days in each. ${found}

It took ${minutes} minutes. \`npm test\` judges the same days without a store, and loads the store on three days.
`;
console.log(`\n${found}`);
if (days === 400) writeFileSync(new URL("../../docs/days.md", import.meta.url), text);
process.exitCode = allLoaded && stories.size === 1 ? 0 : 1;
