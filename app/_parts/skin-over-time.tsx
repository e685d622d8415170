import { gradeMark, type Inspection, isThere, type TrackedMark, trackMarks } from "@/lib/fit";
import { dayAndTimeAt } from "./dates";
import { viewWords } from "./limb-drawing";
import { LimbMap } from "./limb-map";
import { mapGeometry } from "./limb-map-geometry";
import type { MapMark } from "./limb-map-marks";
import type { DrawnLimb } from "./limb-shape";
import { type ChangeKind, changeKinds, changeShapes, changeWords, whatChanged } from "./mark-changes";
import { gradeWords, placeWords, positionWords } from "./mark-words";
import { counted, formatNumber } from "./numbers";
import styles from "./skin-over-time.module.css";

interface SkinOverTimeProps {
  /** Looks after one doffing, in any order. */
  inspections: readonly Inspection[];
  limb: DrawnLimb;
  timeZone: string;
  /** Headings stand one level below that of the section. */
  headingLevel?: 3 | 4;
}

/** The looks after one doffing in a row, on one scale: what is gone, fainter or new, and when each mark had faded. */
export function SkinOverTime({ inspections, limb, timeZone, headingLevel = 3 }: SkinOverTimeProps) {
  const looks = inspections.toSorted(
    (a, b) => a.minutesAfterDoffing - b.minutesAfterDoffing || Date.parse(a.at) - Date.parse(b.at),
  );
  const tracked = trackMarks(looks);
  // A mark keeps its number from look to look.
  const numberOf = (id: string) => tracked.findIndex((mark) => mark.id === id) + 1;
  const Heading = headingLevel === 3 ? "h3" : "h4";
  if (looks.length === 0) return null;
  return (
    <>
      <div className={styles.looks}>
        {looks.map((look, index) => {
          const when = `${counted(look.minutesAfterDoffing, "minute")} after doffing`;
          const before = looks[index - 1];
          const changes = before ? whatChanged(before, look) : [];
          const goneNow = changes.flatMap(({ kind, after }) => (kind === "gone" && after ? [after] : []));
          const drawn = (marks: readonly Inspection["marks"][number][]): MapMark[] =>
            marks.map((mark) => ({ ...mark, number: numberOf(mark.id), grade: gradeMark(mark, look.minutesAfterDoffing) }));
          return (
            <article key={look.id} aria-label={`Look ${when}`}>
              <Heading>{when}</Heading>
              <p className="soft">{dayAndTimeAt(look.at, timeZone)}</p>
              <LimbMap
                title={`Marks ${when}`}
                {...limb}
                marks={drawn(look.marks.filter(isThere))}
                gone={drawn(goneNow)}
                withKey={false}
              />
              {before ? (
                <Changes changes={changes.map(({ kind, id }) => ({ kind, number: numberOf(id) }))} />
              ) : (
                <p>
                  {look.marks.filter(isThere).length === 0
                    ? "No mark anywhere."
                    : `${counted(look.marks.filter(isThere).length, "mark")}.`}
                </p>
              )}
            </article>
          );
        })}
      </div>
      <p className={`soft ${styles.view}`}>
        {viewWords(limb, mapGeometry(limb))} {limb.trimWords} Dotted and struck through: gone since the look before.
      </p>
      {tracked.length > 0 && <Fading tracked={tracked} limbLengthMm={limb.limbLengthMm} />}
    </>
  );
}

function Changes({ changes }: { changes: readonly { kind: ChangeKind; number: number }[] }) {
  if (changes.length === 0) return <p>Nothing has changed.</p>;
  return (
    <ul className={styles.changes}>
      {changeKinds.map((kind) => {
        const numbers = changes.filter((change) => change.kind === kind).map(({ number }) => number);
        if (numbers.length === 0) return null;
        return (
          <li key={kind} className={kind === "harder" || kind === "new" ? styles.worse : undefined}>
            <span aria-hidden="true" className={styles.shape}>
              {changeShapes[kind]}
            </span>
            {changeWords[kind]}: {numbers.sort((a, b) => a - b).join(", ")}
          </li>
        );
      })}
    </ul>
  );
}

function Fading({ tracked, limbLengthMm }: { tracked: readonly TrackedMark[]; limbLengthMm: number }) {
  return (
    <table className={styles.fading}>
      <caption className="heard">When each mark had faded</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="heard">mark</span>
          </th>
          <th scope="col">where</th>
          <th scope="col">worst</th>
          <th scope="col">faded</th>
        </tr>
      </thead>
      <tbody>
        {tracked.map((mark, index) => {
          const first = mark.looks[0]?.mark;
          return (
            <tr key={mark.id}>
              <th scope="row">{index + 1}</th>
              <td>
                {first && placeWords(first, limbLengthMm)}
                <small>{first && positionWords(first)}</small>
              </td>
              <td>
                grade {mark.worstGrade}
                <small>{gradeWords[mark.worstGrade]}</small>
              </td>
              <td className={mark.state === "late" ? styles.worse : undefined}>
                {fadedWords(mark)}
                {mark.unmentionedAtMin.length > 0 && (
                  <small>
                    not looked at {mark.unmentionedAtMin.map((minutes) => formatNumber(minutes, 0)).join(", ")} min after doffing
                  </small>
                )}
              </td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

/** "faded between 10 and 20 min": nobody watched it go, so it is known as an interval only. */
export function fadedWords({ fade: { lowMin, highMin }, lastSeenMin, state }: TrackedMark): string {
  const minutes = (value: number) => `${formatNumber(value, Number.isInteger(value) ? 0 : 1)}`;
  const late = state === "late" ? ": late" : "";
  if (lastSeenMin === null && highMin === 0) return "never seen";
  if (highMin === null) return `still there at ${minutes(lowMin)}\u00a0min${late}; not seen to fade`;
  if (lowMin === highMin) return `faded by ${minutes(highMin)}\u00a0min${late}`;
  return `faded between ${minutes(lowMin)} and ${minutes(highMin)}\u00a0min${late}${state === "unknown" ? ": before or after 20 is not known" : ""}`;
}
