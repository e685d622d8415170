/** What is possible and unusual is asked about once: sent again unchanged, it is meant so. */
import { z } from "zod";
import { inputRange, judgeInput, type Level, type Quantity } from "@/lib/fit";
import { AskedAbout } from "./refusals";

/** What was asked about at an earlier try, as the form brings it back. */
export const Confirmed = z.preprocess(
  (value) => (value === undefined || value === "" ? [] : Array.isArray(value) ? value : [value]),
  z.array(z.string().max(200)).max(500),
);

export interface Question {
  /** Path of the field in the command's input. */
  path: string;
  /** What is unusual, in one sentence. */
  why: string;
  /** Names what was asked and of which value: another value is asked about anew. */
  key: string;
}

/** @throws AskedAbout where any of them was not asked about before */
export function ask(questions: readonly Question[], asked: readonly string[]): void {
  const open = questions.filter(({ key }) => !asked.includes(key));
  if (open.length > 0)
    throw new AskedAbout(
      Object.fromEntries(open.map(({ path, why }) => [path, `${why} Is it so? Save once more if it is.`])),
      questions.map(({ key }) => key),
    );
}

export interface Entered {
  path: string;
  quantity: Quantity;
  value: number | null | undefined;
}

/** Questions about values outside what is usual at a level. What cannot be is refused by the schema. */
export const unusual = (level: Level, entered: readonly Entered[]): Question[] =>
  entered.flatMap(({ path, quantity, value }) => {
    if (value === null || value === undefined || judgeInput(quantity, value, level) === "usual") return [];
    const { name, unit, usual } = inputRange(quantity, level);
    const [least, most] = usual;
    return [
      {
        path,
        why: `${name} ${value}${unit === "°" ? "" : " "}${unit} is unusual at this level; usual is ${least} to ${most}.`,
        key: `${quantity}=${value}`,
      },
    ];
  });
