/** What of a fitting has been answered, from what stands in the fields. Pure. */
import { fittingParts } from "@/app/_parts/check-words";
import type { FormValues } from "@/app/_parts/form-state";
import type { Level } from "@/lib/fit/words";

/** One thing to be answered: done where any field of it holds something. */
interface Thing {
  title: string;
  fields: RegExp;
}

export interface PartOfWork {
  /** The anchor of its section. */
  id: string;
  title: string;
  things: readonly Thing[];
}

export interface PartDone {
  id: string;
  title: string;
  done: number;
  of: number;
  /** What of it is still free, in words. */
  free: readonly string[];
}

export const anchor = (title: string): string => title.toLowerCase().replaceAll(" ", "-");

const beside: Readonly<Record<string, readonly Thing[]>> = {
  "Lifting and pulling": [{ title: "Pulls", fields: /^pulls\.\d+\./ }],
  Standing: [{ title: "Pulls", fields: /^pulls\.\d+\./ }],
  Moving: [{ title: "Motion", fields: /^motion\.\d+\.(?:without|with)Deg$/ }],
  "What the wearer says": [
    { title: "Comfort", fields: /^comfort$/ },
    { title: "Pain", fields: /^pain$/ },
  ],
  "Doffing and skin": [{ title: "Look at the skin", fields: /^look\.minutesAfterDoffing$/ }],
};

/** The parts of a fitting at a level, in the order of the work. */
export const partsOfWork = (level: Level): PartOfWork[] => [
  { id: "before-donning", title: "Before donning", things: [{ title: "Where it was", fields: /^place$/ }] },
  ...fittingParts(level).map(({ title, checks }) => ({
    id: anchor(title),
    title,
    things: [
      ...checks.map(({ key, question }) => ({ title: question, fields: new RegExp(`^checks\\.${key}$`) })),
      ...(beside[title] ?? []),
    ],
  })),
];

/** How much of each part is answered. "Not asked" and "not done" are answers. */
export const doneOf = (parts: readonly PartOfWork[], values: FormValues): PartDone[] =>
  parts.map(({ id, title, things }) => {
    const free = things.filter((thing) => !isAnswered(thing, values)).map((thing) => thing.title);
    return { id, title, done: things.length - free.length, of: things.length, free };
  });

const ratings: readonly string[] = ["comfort", "pain"];

const isAnswered = ({ fields }: Thing, values: FormValues): boolean =>
  Object.entries(values).some(([name, value]) => fields.test(name) && (ratings.includes(name) || String(value).trim() !== ""));
