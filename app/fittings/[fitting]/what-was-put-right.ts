/** What a correction of a fitting changed, one line for each answer: "Sitting: not done → concern". */
import { fittingParts } from "@/app/_parts/check-words";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { markAt } from "@/app/_parts/mark-numbers";
import { fadeWords, findingWords, positionWords, sizeWords } from "@/app/_parts/mark-words";
import { counted, formatNumber } from "@/app/_parts/numbers";
import type { FittingRecord, Inspection, Level } from "@/lib/fit";

/** A version as the store has it: its small lists are JSON columns. */
export interface FittingVersion {
  at: Date;
  place: string;
  whoWasThere: string | null;
  measuredBy: string | null;
  reported: unknown;
  checks: unknown;
  pulls: unknown;
  motion: unknown;
  comfort: number | null;
  pain: number | null;
  words: string | null;
  note: string | null;
  firstLook: Inspection | undefined;
}

interface Around {
  level: Level;
  timeZone: string;
  /** The number of each mark, by its id. */
  numbers: ReadonlyMap<string, number>;
}

export const placesInWords = { clinic: "in the clinic", home: "at home", video: "over video" } as const;

export function whatWasPutRight(before: FittingVersion, after: FittingVersion, around: Around): string[] {
  const [was, is] = [answersOf(before, around), answersOf(after, around)];
  const asked = [...new Set([...was.keys(), ...is.keys()])];
  const answers = asked.flatMap((what) => {
    const [old, now] = [was.get(what) ?? "nothing", is.get(what) ?? "nothing"];
    return old === now ? [] : [`${what}: ${old} → ${now}`];
  });
  return [...answers, ...marksChanged(before.firstLook, after.firstLook, around)];
}

/** Every answer in words, by what was asked, in the order of the page. */
function answersOf(version: FittingVersion, { level, timeZone }: Around): Map<string, string> {
  const { checks, pulls, motion, reported } = version as unknown as Pick<
    FittingRecord,
    "checks" | "pulls" | "motion" | "reported"
  >; // the JSON columns, as the command wrote them
  const { firstLook } = version;
  const rating = (value: number | null) => (value === null ? "not asked" : formatNumber(value, Number.isInteger(value) ? 0 : 1));
  return new Map([
    ["When", dayAndTimeAt(version.at, timeZone)],
    ["Where", placesInWords[version.place as FittingRecord["place"]]], // the column holds only what the command let pass
    ["Who was there", version.whoWasThere ?? "nothing"],
    ["Who measured", version.measuredBy ?? "nothing"],
    ["Told, not seen", listed(reported ?? [])],
    ...fittingParts(level)
      .flatMap((part) => part.checks)
      .map(({ key, question }): [string, string] => [question, checks[key] ?? "not done"]),
    ["Pulls", pullsInWords(pulls)],
    ...motion.map(({ joint, withoutDeg, withDeg }): [string, string] => [
      `Motion, ${joint.replaceAll("-", " ")}`,
      `${plain(withDeg)}° with, ${plain(withoutDeg)}° without`,
    ]),
    ["Comfort", rating(version.comfort)],
    ["Pain", rating(version.pain)],
    ["The wearer’s words", version.words ?? "nothing"],
    ["Note", version.note ?? "nothing"],
    ["Skin", firstLook ? `looked at ${counted(firstLook.minutesAfterDoffing, "minute")} after doffing` : "not looked at"],
  ]);
}

function marksChanged(before: Inspection | undefined, after: Inspection | undefined, around: Around): string[] {
  const [was, is] = [marksOf(before, around), marksOf(after, around)];
  return [...new Set([...was.keys(), ...is.keys()])]
    .sort((a, b) => a - b)
    .flatMap((number) => {
      const [old, now] = [was.get(number), is.get(number)];
      if (!old || !now)
        return old ? [`Mark ${number} taken out: ${old.join("; ")}`] : [`Mark ${number} added: ${now?.join("; ")}`];
      const parts = old.flatMap((words, place) => (words === now[place] ? [] : [`${words} → ${now[place]}`]));
      return parts.length > 0 ? [`Mark ${number}: ${parts.join("; ")}`] : [];
    });
}

/** Every mark of a look by its number: what was found, where, how large, when it had faded. */
function marksOf(look: Inspection | undefined, { numbers }: Around): Map<number, string[]> {
  return new Map(
    (look?.marks ?? []).map((found) => {
      const mark = markAt({ minutesAfterDoffing: look?.minutesAfterDoffing ?? 0 }, found, numbers);
      return [mark.number, [findingWords(mark), positionWords(mark), sizeWords(mark), fadeWords(mark)].filter(Boolean)];
    }),
  );
}

/** As it was written, without the digits that a change of unit leaves. */
const plain = (value: number): string => String(Number(value.toFixed(2)));

export const pullsInWords = (pulls: FittingRecord["pulls"]): string =>
  listed(pulls.map(({ loadN, displacementMm }) => `${plain(displacementMm)} mm at ${plain(loadN)} N`));

const listed = (words: readonly string[]): string => (words.length > 0 ? words.join(", ") : "none");
