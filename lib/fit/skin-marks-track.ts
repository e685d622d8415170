/** A mark followed from one look at the skin to the next, until it has faded. */
import type { Inspection, SkinMark } from "./bundle";
import { FitInputError } from "./errors";
import { fadingMin, gradeMark, isThere, type MarkGrade } from "./skin-marks-grade";

/**
 * *late*: faded after 20 minutes, or still there then: what is there at 20 minutes fades after them. *unknown*: nobody looked until it had gone, or it went between
 * a look before 20 minutes and one after.
 */
export type FadeState = "in time" | "late" | "unknown";

export interface TrackedMark {
  id: string;
  /** Minutes after doffing of the first and last look at which it was there; null where it never was. */
  firstSeenMin: number | null;
  lastSeenMin: number | null;
  /** It faded somewhere between the two; `highMin` is null as long as it has not been seen gone. */
  fade: { lowMin: number; highMin: number | null };
  state: FadeState;
  /** Seen at a look at 20 minutes or later. */
  stillThereLate: boolean;
  /** Not among the marks of the first look: it came later, or was missed. */
  appearedLater: boolean;
  /** Looks after the last one that mentions it, in minutes after doffing. They say nothing of it: unknown, not gone. */
  unmentionedAtMin: number[];
  /** At whatever look it was worst. */
  worstGrade: MarkGrade;
  /** As it was at each look that mentions it, in the order of time. */
  looks: { minutesAfterDoffing: number; mark: SkinMark }[];
}

/**
 * Joins marks over looks by their id and says when each had faded.
 *
 * The time is `fadedAtMin` where one is given (the latest, if they differ), else the interval from the last look at which it was
 * there to the first at which it was gone. Being there outweighs a time of fading: a look that shows the mark at that
 * time or later takes it away. A look that does not mention a mark says nothing about it.
 *
 * @param inspections of one doffing, in any order
 * @returns one entry a mark, in the order in which the marks were first recorded
 * @throws FitInputError where a time is negative or no number
 * @source fading-20-min
 *
 * @example
 * trackMarks([]).length
 * // => 0
 */
export function trackMarks(inspections: readonly Inspection[]): TrackedMark[] {
  inspections.forEach(({ minutesAfterDoffing }, index) => {
    if (!(minutesAfterDoffing >= 0 && Number.isFinite(minutesAfterDoffing)))
      throw new FitInputError(`inspections[${index}].minutesAfterDoffing`, "expected minutes after doffing");
  });
  const inOrder = inspections.toSorted(
    (a, b) => a.minutesAfterDoffing - b.minutesAfterDoffing || (a.id < b.id ? -1 : Number(a.id > b.id)),
  );
  const looksOf = new Map<string, TrackedMark["looks"]>();
  for (const { minutesAfterDoffing, marks } of inOrder)
    for (const mark of marks) {
      const look = { minutesAfterDoffing, mark };
      const looks = looksOf.get(mark.id);
      if (looks) looks.push(look);
      else looksOf.set(mark.id, [look]);
    }
  const lookTimes = inOrder.map(({ minutesAfterDoffing }) => minutesAfterDoffing);
  return [...looksOf].map(([id, looks]) => track(id, looks, lookTimes));
}

function track(id: string, looks: TrackedMark["looks"], lookTimes: readonly number[]): TrackedMark {
  const there = looks.filter(({ mark }) => isThere(mark)).map(({ minutesAfterDoffing }) => minutesAfterDoffing);
  const firstSeenMin = there[0] ?? null;
  const lastSeenMin = there.at(-1) ?? null;
  const fade = fadeOf(looks, lastSeenMin);
  const lastMentionedMin = looks.at(-1)?.minutesAfterDoffing ?? 0;
  const stillThereLate = lastSeenMin !== null && lastSeenMin >= fadingMin;
  return {
    id,
    firstSeenMin,
    lastSeenMin,
    fade,
    state:
      stillThereLate || fade.lowMin > fadingMin
        ? "late"
        : fade.highMin !== null && fade.highMin <= fadingMin
          ? "in time"
          : "unknown",
    stillThereLate,
    appearedLater: (looks[0]?.minutesAfterDoffing ?? 0) > (lookTimes[0] ?? 0),
    unmentionedAtMin: lookTimes.filter((minutes) => minutes > lastMentionedMin),
    worstGrade: highest(looks.map(({ minutesAfterDoffing, mark }) => gradeMark(mark, minutesAfterDoffing))),
    looks,
  };
}

const highest = (grades: readonly MarkGrade[]): MarkGrade => grades.toSorted((a, b) => b - a)[0] ?? 0;

function fadeOf(looks: TrackedMark["looks"], lastSeenMin: number | null): TrackedMark["fade"] {
  const lowMin = lastSeenMin ?? 0;
  let latest: number | null = null;
  for (const { mark } of looks)
    if (mark.fadedAtMin !== null && (latest === null || mark.fadedAtMin > latest)) latest = mark.fadedAtMin;
  if (latest !== null && (lastSeenMin === null || latest > lastSeenMin)) return { lowMin: latest, highMin: latest };
  const gone = looks.find(({ minutesAfterDoffing, mark }) => !isThere(mark) && minutesAfterDoffing > lowMin);
  return { lowMin, highMin: gone?.minutesAfterDoffing ?? (lastSeenMin === null ? 0 : null) };
}
