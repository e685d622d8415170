/** What can be said of a mark that is being written down: in its row, and aloud on the map. */
import { missingOf } from "./mark-check";
import {
  type DraftValues,
  gradeSoFar,
  isNumber,
  type LengthUnit,
  placeOfDraft,
  signsOf,
  typedLength,
  typedNumber,
} from "./mark-draft";
import { isSaidGone } from "./mark-editor-state";
import { placeWords, positionWords, sizeWords, strengthWords } from "./mark-words";

/** "anterior, middle third", as far as it is known. */
export function whereWords(
  values: DraftValues,
  { limbLengthMm, unit }: { limbLengthMm: number; unit: LengthUnit },
): { place: string; position: string } {
  const place = placeOfDraft(values, unit);
  return place
    ? { place: placeWords(place, limbLengthMm), position: positionWords(place).replace(" from the end", "") }
    : { place: "where?", position: "" };
}

export function sizeSoFar(values: DraftValues, unit: LengthUnit): string {
  const [widthMm, heightMm] = [typedLength(values.widthMm, unit), typedLength(values.heightMm, unit)];
  if (isNumber(widthMm) && isNumber(heightMm)) return sizeWords({ widthMm, heightMm });
  return isNumber(widthMm) || isNumber(heightMm)
    ? `${isNumber(widthMm) ? widthMm : "?"} × ${isNumber(heightMm) ? heightMm : "?"}\u00a0mm`
    : "how large?";
}

export function strengthSoFar(values: DraftValues): string {
  if (isSaidGone(values)) return "gone";
  return Object.entries(strengthWords).find(([word]) => word === values.strength)?.[1] ?? "how strong?";
}

/** "firm, painful, blanches, gone at 9 min" */
export function signsSoFar(values: DraftValues): string {
  const { firm, warm, painful, broken } = signsOf(values);
  const faded = typedNumber(values.fadedAtMin);
  const blanching = { yes: "blanches", no: "does not blanch", "not tested": "not tested" }[values.blanches ?? ""];
  const words = [
    firm && "firm",
    warm && "warm",
    painful && "painful",
    broken && "skin broken",
    !isSaidGone(values) && blanching,
    faded && `gone at ${faded}\u00a0min`,
  ];
  return words.filter(Boolean).join(", ");
}

interface Around {
  number: number;
  unit: LengthUnit;
  limbLengthMm: number;
  lookedAtMin: number | undefined;
}

/** The whole mark in one sentence, with what is still to be answered. */
export function draftSentence(values: DraftValues, { number, unit, limbLengthMm, lookedAtMin }: Around): string {
  const grade = gradeSoFar(values, lookedAtMin);
  const missing = missingOf(values);
  const { place, position } = whereWords(values, { limbLengthMm, unit });
  const parts = [
    `${place}, ${position.replace(",", " from the end,")}`,
    sizeSoFar(values, unit),
    values.strength ? strengthSoFar(values) : "",
    signsSoFar(values),
    grade === null ? "" : `grade ${grade} of 4${missing.length > 0 ? " so far" : ""}`,
    missing.length > 0 ? `to be answered: ${missing.join(", ")}` : "",
  ];
  return `Mark ${number}: ${parts.filter(Boolean).join("; ")}.`;
}
