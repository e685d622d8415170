import { timeAt } from "@/app/_parts/dates";
import { LineChart } from "@/app/_parts/line-chart";
import { counted, formatNumber } from "@/app/_parts/numbers";
import { feelingWords, stopSignWords } from "@/app/_parts/skin-words";
import { replayWearTrial, type TrialLimits, type WearTrial, type WearTrialRecord } from "@/lib/fit";
import { courseInWords } from "./course-words";
import styles from "./trial.module.css";

interface TrialCourseProps {
  record: WearTrialRecord;
  trial: WearTrial;
  limits: TrialLimits;
  timeZone: string;
}

/** Comfort, pain and exertion over the minutes worn, each with its limit, with pauses and stop signs; the table behind. */
export function TrialCourse({ record, trial, limits, timeZone }: TrialCourseProps) {
  const said = trial.checkIns.filter(({ during }) => during);
  if (said.length === 0) return null;
  const minutes = Math.max(trial.plannedMinutes, trial.wornMinutes, ...said.map(({ wornMinutes }) => wornMinutes));
  const moments = [
    ...record.events.flatMap(({ kind, at }) =>
      kind === "paused" ? [{ at: replayWearTrial(record.plan, record.events, at).wornMinutes, label: "pause" }] : [],
    ),
    ...trial.stopSigns.map(({ wornMinutes }) => ({ at: wornMinutes, label: "stop" })),
  ];
  const scales = [
    ["Comfort", "comfort", { value: limits.comfortLast, label: `at the end ${limits.comfortLast} or more` }],
    ["Pain", "pain", { value: limits.painMost, label: `at most ${limits.painMost}` }],
    ["Exertion", "exertion", undefined],
  ] as const;
  return (
    <section aria-labelledby="course">
      <h2 id="course">How it went</h2>
      <div className={styles.course}>
        {scales.map(([name, scale, limit]) => {
          const words = courseInWords(name, trial.series[scale], limits.trendP);
          return (
            <figure key={scale}>
              <figcaption>
                <strong>{name}</strong>, 0 to 10, by minutes worn
              </figcaption>
              <LineChart
                points={said.map((checkIn) => ({
                  at: checkIn.wornMinutes,
                  label: formatNumber(checkIn.wornMinutes, 0),
                  value: checkIn[scale],
                }))}
                unit=""
                summary={words}
                limit={limit}
                frame={{ along: [0, minutes], up: [0, 10] }}
                moments={moments}
              />
              <p className="soft">{words}</p>
            </figure>
          );
        })}
      </div>
      {trial.stopSigns.map(({ id, sign, wornMinutes }) => (
        <p key={id}>
          <strong>
            Stop sign after {counted(wornMinutes, "minute")}: {stopSignWords[sign]}.
          </strong>
        </p>
      ))}
      <details>
        <summary>The same as a table</summary>
        <table>
          <caption className="heard">What was said during the trial</caption>
          <thead>
            <tr>
              <th scope="col" className="n">
                minutes worn
              </th>
              <th scope="col">time</th>
              <th scope="col" className="n">
                comfort
              </th>
              <th scope="col" className="n">
                pain
              </th>
              <th scope="col" className="n">
                exertion
              </th>
              <th scope="col">felt</th>
            </tr>
          </thead>
          <tbody>
            {said.map(({ id, wornMinutes, at, comfort, pain, exertion, feelings }) => (
              <tr key={id}>
                <th scope="row" className="n">
                  {formatNumber(wornMinutes, 1)}
                </th>
                <td>{timeAt(at, timeZone)}</td>
                <td className="n">{comfort}</td>
                <td className="n">{pain}</td>
                <td className="n">{exertion}</td>
                <td>
                  {feelings
                    .map(({ kind, aspect, third }) =>
                      [feelingWords[kind], aspect, third && `${third} third`].filter(Boolean).join(" "),
                    )
                    .join(", ") || "nothing named"}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </details>
    </section>
  );
}
