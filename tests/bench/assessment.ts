/** Judging the example episode, against reading the same text as JSON. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { assessReadiness } from "@/lib/fit";
import { withinBar } from "./ratio";

const text = readFileSync(path.resolve(import.meta.dirname, "../fit/ready-transradial.json"), "utf8");
/** Parsed beforehand, a fresh one each time: what was judged once may not help the next time. */
const parsed = Array.from({ length: 100 }, () => JSON.parse(text));
let next = 0;

export const assessmentWithinBar = () =>
  withinBar({
    name: "assessReadiness of the example, against JSON.parse of its text",
    subject: () => void assessReadiness(parsed[next++ % parsed.length]),
    baseline: () => void JSON.parse(text),
    bar: 5,
  });
