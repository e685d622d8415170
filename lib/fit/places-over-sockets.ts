/** Where the skin was marked, place by place over the sockets of a series. */
import type { Bundle, SkinMark } from "./bundle";
import { type MarkFate, marksBetween } from "./marks-between";
import { gradeMark, type MarkGrade } from "./skin-marks-grade";
import { usualCircumferenceMm } from "./skin-marks-map";
import type { SkinFindings } from "./socket-findings";
import { circumferenceFromEnd } from "./stations";

export interface PlaceWithSocket {
  /** 0 where there is no mark. */
  grade: MarkGrade;
  /** Missing where there is none. */
  mark?: SkinMark;
  /** Since the socket before, of those whose skin was looked at; missing where there was no mark with either, and for the first. */
  fate?: MarkFate;
}

export interface MarkedPlace {
  /** "A", "B", … in the order in which the places were first marked: a mark's own number is another with every socket. */
  name: string;
  /** A socket a column; undefined where the skin was not looked at. */
  sockets: (PlaceWithSocket | undefined)[];
}

/**
 * Follows the marked places of a limb over several sockets: the marks that `marksBetween` takes for the same one are at
 * one place.
 *
 * @param skins of sockets of one episode in their order, each after the same occasion; undefined where nobody looked
 * @throws FitInputError where a mark has no size or place
 * @source mark-grade
 */
export function placesOverSockets(
  { episode, limbMeasurements }: Pick<Bundle, "episode" | "limbMeasurements">,
  skins: readonly (SkinFindings | undefined)[],
): MarkedPlace[] {
  const stations = limbMeasurements.at(-1)?.stations ?? [];
  const circumferenceMm = (distanceFromEndMm: number) =>
    circumferenceFromEnd(stations, distanceFromEndMm, episode) ?? usualCircumferenceMm;
  const places: { latest: SkinMark; marks: Map<number, SkinMark> }[] = [];
  skins.forEach((skin, column) => {
    const known = places.map(({ latest }) => latest);
    for (const { before, after } of marksBetween({ marks: known }, { marks: skin?.marks ?? [] }, { circumferenceMm })) {
      if (!after) continue;
      const place = places.find(({ latest }) => latest === before) ?? { latest: after, marks: new Map() };
      if (!places.includes(place)) places.push(place);
      place.latest = after;
      place.marks.set(column, after);
    }
  });
  return places.map(({ marks }, index) => ({ name: nameOf(index), sockets: over(skins, marks) }));
}

function over(
  skins: readonly (SkinFindings | undefined)[],
  marks: ReadonlyMap<number, SkinMark>,
): (PlaceWithSocket | undefined)[] {
  let before: MarkGrade | undefined;
  return skins.map((skin, column) => {
    if (!skin) return undefined;
    const mark = marks.get(column);
    const grade = mark ? gradeMark(mark, skin.lookedAtMin) : 0;
    const fate = before === undefined ? undefined : fateOf(before, grade);
    before = grade;
    return { grade, ...(mark ? { mark } : {}), ...(fate ? { fate } : {}) };
  });
}

function fateOf(before: MarkGrade, after: MarkGrade): MarkFate | undefined {
  if (before === 0) return after === 0 ? undefined : "new";
  if (after === 0) return "gone";
  return after === before ? "same" : after < before ? "fainter" : "harder";
}

const letters = 26;

/** A … Z, AA … */
function nameOf(index: number): string {
  const letter = String.fromCharCode("A".charCodeAt(0) + (index % letters));
  return index < letters ? letter : nameOf(Math.floor(index / letters) - 1) + letter;
}
