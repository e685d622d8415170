/** Judging the example episode, against reading the same text as JSON. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { assessReadiness, type Bundle } from "@/lib/fit";
import { withinBar } from "./ratio";

const text = readFileSync(path.resolve(import.meta.dirname, "../fit/ready-transradial.json"), "utf8");

/** Read anew for each time: what was judged once may not help the next time. */
const prepare = (): Bundle => JSON.parse(text);

export const assessmentWithinBar = () =>
  withinBar({
    name: "assessReadiness of the example, against JSON.parse of its text",
    subject: { prepare, run: (bundle) => assessReadiness(bundle) },
    baseline: { prepare, run: () => JSON.parse(text) },
    bar: 5,
    firstRuns: 10_000,
  });
