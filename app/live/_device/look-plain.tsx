import { type FormEvent, useId, useState } from "react";
import { newUuid } from "@/app/_parts/draft-store";
import { mapGeometry } from "@/app/_parts/limb-map-geometry";
import type { Inspection } from "@/lib/fit/bundle";
import { type Aspect, aspects, type Third, thirds } from "@/lib/fit/words";
import styles from "./live.module.css";
import type { LiveTrial } from "./live-trial";
import { heightWords, sideWords } from "./words";

interface PlainMark {
  markId: string;
  /** The words of its place, for a mark that was seen before. */
  known?: { distanceFromEndMm: number; angleDeg: number; widthMm: number; heightMm: number };
  side: Aspect | "end" | "";
  height: Third | "";
  colour: string;
  pale: string;
  firm: boolean;
  warm: boolean;
  painful: boolean;
  broken: boolean;
}

interface LookProps {
  trial: LiveTrial;
  last: Inspection | undefined;
  save: (look: { marks: Record<string, unknown>[]; noMarks: boolean; note: string }) => void;
}

const colours = [
  ["none", "no colour (any more)"],
  ["faint", "a little red or darker"],
  ["clear", "clearly red or darker"],
  ["deep", "very red or dark"],
  ["purple", "purple or black"],
] as const;
const pales = [
  ["yes", "goes pale"],
  ["no", "stays as it is"],
  ["not tested", "did not try"],
] as const;
const signs = [
  ["firm", "feels hard"],
  ["warm", "feels hot"],
  ["painful", "is sore"],
  ["broken", "open or blistered"],
] as const;
const centre = { anterior: 0, lateral: 90, posterior: 180, medial: 270 } as const;
const heightPart = { proximal: 5 / 6, middle: 1 / 2, distal: 1 / 6 } as const;
/** A rough size, said as such: nobody measures at home. */
const sizeMm = 30;

/** A look in plain words: each place that is red, dark, hard, hot, sore or open, and how it is when pressed. */
export function LookPlain({ trial, last, save }: LookProps) {
  const [marks, setMarks] = useState<readonly PlainMark[]>(() => (last?.marks ?? []).filter(isThere).map(seenBefore));
  const [isNone, setNone] = useState(false);
  const [wrong, setWrong] = useState("");
  const change = (markId: string, with_: Partial<PlainMark>) =>
    setMarks(marks.map((mark) => (mark.markId === markId ? { ...mark, ...with_ } : mark)));

  function keep(event: FormEvent) {
    event.preventDefault();
    const message = whatIsWrong(marks, isNone);
    setWrong(message);
    if (message) return;
    save({
      marks: marks.map((mark) => asSent(mark, trial)),
      noMarks: isNone,
      note: marks.some(({ known }) => !known) ? "Place and size are rough: told in words, not measured." : "",
    });
  }

  return (
    <form onSubmit={keep} noValidate className={styles.look} aria-label="Look at the skin">
      <p>
        Look all round the limb, use a mirror for the back, and look at the end. On dark skin red is hard to see: feel for hard or
        hot places, and say what is sore. Press each mark with a finger: does it go pale?
      </p>
      {marks.map((mark, index) => (
        <Mark key={mark.markId} number={index + 1} mark={mark} change={(with_) => change(mark.markId, with_)}>
          {!mark.known && (
            <button type="button" className="quiet" onClick={() => setMarks(marks.filter((other) => other !== mark))}>
              Take this mark away
            </button>
          )}
        </Mark>
      ))}
      <button type="button" className="quiet" onClick={() => setMarks([...marks, blank()])}>
        {marks.length === 0 ? "There is a mark" : "There is another mark"}
      </button>
      {marks.length === 0 && (
        <label className={styles.tick}>
          <input type="checkbox" checked={isNone} onChange={(event) => setNone(event.target.checked)} /> No mark anywhere, I
          looked all round and at the end
        </label>
      )}
      {wrong && (
        <p role="alert" className={styles.wrong}>
          {wrong}
        </p>
      )}
      <button type="submit" className={styles.large}>
        Save this look
      </button>
    </form>
  );
}

interface MarkProps {
  number: number;
  mark: PlainMark;
  change: (with_: Partial<PlainMark>) => void;
  children: React.ReactNode;
}

function Mark({ number, mark, change, children }: MarkProps) {
  return (
    <fieldset className={styles.mark}>
      <legend>
        Mark {number}
        {mark.known && `: ${placeWords(mark)}`}
      </legend>
      {!mark.known && (
        <>
          <Pick
            label="Where?"
            options={[...aspects.map((aspect) => [aspect, sideWords[aspect]] as const), ["end", "the very end"] as const]}
            value={mark.side}
            pick={(side) => change({ side: side as PlainMark["side"] })} // one of the options
          />
          {mark.side !== "end" && (
            <Pick
              label="How far up?"
              options={thirds.map((third) => [third, heightWords[third]] as const)}
              value={mark.height}
              pick={(height) => change({ height: height as Third })} // one of the options
            />
          )}
        </>
      )}
      <Pick
        label={mark.known ? "How is it now?" : "How does it look?"}
        options={colours}
        value={mark.colour}
        pick={(colour) => change({ colour })}
      />
      {mark.colour !== "none" && (
        <Pick label="When you press it" options={pales} value={mark.pale} pick={(pale) => change({ pale })} />
      )}
      <fieldset className={styles.pick}>
        <legend>Is any of this so now?</legend>
        <div className={styles.chips}>
          {signs.map(([sign, words]) => (
            <label key={sign}>
              <input type="checkbox" checked={mark[sign]} onChange={(event) => change({ [sign]: event.target.checked })} />
              {words}
            </label>
          ))}
        </div>
      </fieldset>
      {children}
    </fieldset>
  );
}

interface PickProps {
  label: string;
  options: readonly (readonly [string, string])[];
  value: string;
  pick: (value: string) => void;
}

function Pick({ label, options, value, pick }: PickProps) {
  const name = useId();
  return (
    <fieldset className={styles.pick}>
      <legend>{label}</legend>
      <div className={styles.chips}>
        {options.map(([one, words]) => (
          <label key={one}>
            <input type="radio" name={name} checked={value === one} onChange={() => pick(one)} />
            {words}
          </label>
        ))}
      </div>
    </fieldset>
  );
}

type Seen = Inspection["marks"][number];

const isThere = ({ strength, firm, warm, painful, broken }: Seen): boolean =>
  strength !== "none" || firm || warm || painful || broken;

const unanswered = { colour: "", pale: "", firm: false, warm: false, painful: false, broken: false };
const blank = (): PlainMark => ({ markId: newUuid(), side: "", height: "", ...unanswered });

const seenBefore = ({ id, distanceFromEndMm, angleDeg, widthMm, heightMm }: Seen): PlainMark => ({
  markId: id,
  known: { distanceFromEndMm, angleDeg, widthMm, heightMm },
  side: "",
  height: "",
  ...unanswered,
});

function placeWords({ known }: PlainMark): string {
  if (!known) return "";
  const side = aspects[Math.round(known.angleDeg / 90) % 4] ?? "anterior";
  return known.distanceFromEndMm <= 0
    ? "the very end"
    : `${sideWords[side]}, ${Math.round(known.distanceFromEndMm / 10)} cm from the end`;
}

function whatIsWrong(marks: readonly PlainMark[], isNone: boolean): string {
  if (marks.length === 0 && !isNone) return "Say if there is a mark, or tick that there is none.";
  const at = marks.findIndex(
    ({ known, side, height, colour, pale }) =>
      (!known && (side === "" || (side !== "end" && height === ""))) || colour === "" || (colour !== "none" && pale === ""),
  );
  return at === -1 ? "" : `Mark ${at + 1}: press an answer in each row.`;
}

function asSent(
  { markId, known, side, height, colour, pale, firm, warm, painful, broken }: PlainMark,
  trial: LiveTrial,
): Record<string, unknown> {
  const place = known ?? roughPlace(side === "" ? "anterior" : side, height === "" ? "distal" : height, trial);
  return { markId, ...place, strength: colour, blanches: colour === "none" ? "not tested" : pale, firm, warm, painful, broken };
}

function roughPlace(side: Aspect | "end", height: Third, { limb }: LiveTrial) {
  if (side === "end") return { distanceFromEndMm: 0, angleDeg: 0, widthMm: sizeMm, heightMm: sizeMm };
  const distanceFromEndMm = Math.round(limb.limbLengthMm * heightPart[height]);
  const around = mapGeometry(limb).circumferenceAt(distanceFromEndMm);
  const widthMm = around === undefined ? sizeMm : Math.min(sizeMm, Math.floor(around / 4));
  return { distanceFromEndMm, angleDeg: centre[side], widthMm, heightMm: Math.min(sizeMm, Math.floor(limb.limbLengthMm / 4)) };
}
