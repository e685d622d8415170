import styles from "./wearing.module.css";
import type { WearingDay } from "./wearing-days";
import { wearingWords } from "./wearing-words";

/** A row a day: how long, a box for each time, and what the skin looked like. Ticked with a pen. */
export function TickList({ days }: { days: readonly WearingDay[] }) {
  return (
    <table className={styles.days}>
      <caption className="heard">How long to wear the socket, day by day</caption>
      <thead>
        <tr>
          {wearingWords.heads.map((head) => (
            <th key={head} scope="col">
              {head}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {days.map(({ when, howLong, times, goesOn }) => (
          <tr key={when}>
            <th scope="row">{when}</th>
            <td>{howLong}</td>
            <td>
              {goesOn ? (
                wearingWords.goesOn.ticks
              ) : (
                <>
                  <span className="heard">{times} times</span>
                  <Boxes count={times} />
                </>
              )}
            </td>
            <td>
              {goesOn ? (
                wearingWords.goesOn.marks
              ) : (
                <span className={styles.answer}>
                  <Boxes count={1} /> yes <Boxes count={1} /> no
                </span>
              )}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const Boxes = ({ count }: { count: number }) =>
  Array.from({ length: count }, (_, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: boxes are alike and never change their order.
    <svg key={index} viewBox="0 0 22 22" className={styles.box} aria-hidden="true">
      <rect x="2" y="2" width="18" height="18" rx="2" />
    </svg>
  ));
