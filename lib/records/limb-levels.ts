/** The levels of one measurement as they were typed: put in order, refused where they cannot be, asked about where they are odd. */
import { detectableDifferenceMm, inputRange, judgeInput, jumpKey, type Level, levelJumps, type Station } from "@/lib/fit";
import { InputRefused } from "./refusals";
import { type Question, unusual } from "./unusual";

export interface TypedLevel extends Station {
  againMm?: number | undefined;
}

/** `row` leads back to the row of the form, whatever the order. */
export type OrderedLevel = TypedLevel & { row: number };

/** @throws InputRefused where a level is there twice */
export function inOrder(typed: readonly TypedLevel[]): OrderedLevel[] {
  const levels = typed.map((level, row) => ({ ...level, row })).sort((a, b) => a.distanceMm - b.distanceMm || a.row - b.row);
  levels.forEach(({ distanceMm, row }, index) => {
    if (levels[index - 1]?.distanceMm === distanceMm)
      throw new InputRefused({
        [`stations.${row}.distanceMm`]: `The level at ${distanceMm} mm is there twice. A second reading of a level stands under “Measure again”.`,
      });
  });
  return levels;
}

/** What no limb of this level has is refused, however often it is sent; a level far off the limb is a slip. */
export function refuseImpossible(
  levels: readonly OrderedLevel[],
  { level, limbLengthMm }: { level: Level; limbLengthMm: number },
): void {
  const [least, most] = inputRange("circumferenceMm", level).taken;
  for (const { row, distanceMm, circumferenceMm, againMm } of levels) {
    if (Math.abs(distanceMm) > 2 * limbLengthMm + 100)
      throw new InputRefused({
        [`stations.${row}.distanceMm`]: `This residual limb is ${limbLengthMm} mm long: the level would lie far off it.`,
      });
    for (const [field, mm] of Object.entries({ circumferenceMm, againMm }))
      if (mm !== undefined && judgeInput("circumferenceMm", mm, level) === "refused")
        throw new InputRefused({
          [`stations.${row}.${field}`]: `A ${level} limb is ${least} to ${most} mm round, not ${mm} mm.`,
        });
  }
}

interface Asked {
  level: Level;
  /** Of the measurement before, if there was one. */
  lastTime: readonly Station[];
  /** Standard error of one circumference. */
  tapeErrorMm: number;
}

/** One question a field at most: the next try asks the next. */
export function questionsAbout(levels: readonly OrderedLevel[], { level, lastTime, tapeErrorMm }: Asked): Question[] {
  const sizes = unusual(
    level,
    levels.flatMap(({ row, distanceMm, circumferenceMm }) => [
      { path: `stations.${row}.distanceMm`, quantity: "stationDistanceMm" as const, value: distanceMm },
      { path: `stations.${row}.circumferenceMm`, quantity: "circumferenceMm" as const, value: circumferenceMm },
    ]),
  );
  const asked = new Set(sizes.map(({ path }) => path));
  return [...sizes, ...jumpQuestions(levels, lastTime).filter(({ path }) => !asked.has(path)), ...farApart(levels, tapeErrorMm)];
}

function jumpQuestions(levels: readonly OrderedLevel[], lastTime: readonly Station[]): Question[] {
  return levelJumps(levels, lastTime).flatMap(({ index, percent, beforeMm }) => {
    const level = levels[index];
    if (!level) return [];
    const share = `${Math.round(Math.abs(percent))} % ${percent > 0 ? "more" : "less"}`;
    return [
      {
        path: `stations.${level.row}.circumferenceMm`,
        why: `${level.circumferenceMm} mm is ${share} than at the level before, ${beforeMm} mm.`,
        key: jumpKey(level, beforeMm),
      },
    ];
  });
}

/** Two readings of one level at once that are further apart than the tape's error: one of them may be a slip. */
function farApart(levels: readonly OrderedLevel[], tapeErrorMm: number): Question[] {
  const most = detectableDifferenceMm(tapeErrorMm);
  return levels.flatMap(({ row, circumferenceMm, againMm }) =>
    againMm !== undefined && Math.abs(againMm - circumferenceMm) > most
      ? [
          {
            path: `stations.${row}.againMm`,
            why: `The two readings, ${circumferenceMm} and ${againMm} mm, are further apart than the tape’s error.`,
            key: `readings ${circumferenceMm} and ${againMm}`,
          },
        ]
      : [],
  );
}
