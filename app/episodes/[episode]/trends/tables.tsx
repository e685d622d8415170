import { dayAt, longDay } from "@/app/_parts/dates";
import { formatNumber, formatQuantity } from "@/app/_parts/numbers";
import type { SeriesTrends, SocketTrend } from "@/lib/fit";
import type { volumePoints } from "../limb-size";
import styles from "./trends.module.css";

const hardestWords = ["none", "faint", "clear", "deep or firm", "broken or purple"] as const;

interface Column {
  head: string;
  of: (socket: SocketTrend) => string;
}

const columns: readonly Column[] = [
  { head: "comfort at the fitting", of: ({ comfortAtFitting }) => outOfTen(comfortAtFitting, "not asked") },
  { head: "last comfort of the trial", of: ({ comfortInTrial }) => outOfTen(comfortInTrial, "not asked") },
  {
    head: "hardest mark",
    of: ({ hardestMark }) =>
      hardestMark ? `${hardestWords[hardestMark.grade]} (${hardestMark.grade}), ${hardestMark.after}` : "not looked",
  },
  {
    head: "displacement",
    of: ({ displacement }) =>
      displacement
        ? `${formatQuantity({ ...displacement, unit: "mm" })} at ${formatQuantity({ value: displacement.atN, unit: "N" })}`
        : "not measured",
  },
  {
    head: "index, 90 % interval",
    of: ({ index }) =>
      index
        ? [
            formatNumber(index.value, 2),
            index.low90 !== undefined &&
              index.high90 !== undefined &&
              `${formatNumber(index.low90, 2)} to ${formatNumber(index.high90, 2)}`,
          ]
            .filter(Boolean)
            .join(", ")
        : "not known",
  },
  { head: "stop signs", of: ({ stopSigns }) => (stopSigns === 0 ? "none" : String(stopSigns)) },
];

const outOfTen = (value: number | undefined, otherwise: string): string =>
  value === undefined ? otherwise : formatNumber(value, Number.isInteger(value) ? 0 : 1);

const wholeMl = (value: number): string => `${formatNumber(value, 0)}\u00a0mL`;

/** The numbers of the four panels of sockets, one press away; open on paper and without scripts. */
export function SocketTable({ trends: { sockets, neverWorn }, timeZone }: { trends: SeriesTrends; timeZone: string }) {
  return (
    <details className={styles.same}>
      <summary>The sockets as a table</summary>
      <table className={styles.sockets}>
        <caption>Each socket on the day it was last worn</caption>
        <thead>
          <tr>
            <th scope="col">socket</th>
            <th scope="col">last worn</th>
            {columns.map(({ head }) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {sockets.map((socket) => (
            <tr key={socket.socketId}>
              <th scope="row">
                <span className={styles.of}>socket </span>
                {socket.number}
              </th>
              <td>{longDay(dayAt(new Date(socket.atMs), timeZone))}</td>
              {columns.map(({ head, of }) => (
                <td key={head}>
                  <span className={styles.of} aria-hidden="true">
                    {head}{" "}
                  </span>
                  {of(socket)}
                </td>
              ))}
            </tr>
          ))}
          {neverWorn.map((number) => (
            <tr key={number}>
              <th scope="row">
                <span className={styles.of}>socket </span>
                {number}
              </th>
              <td colSpan={columns.length + 1}>never worn</td>
            </tr>
          ))}
        </tbody>
      </table>
    </details>
  );
}

/** The numbers of the limb's panel. */
export function LimbTable({ volumes, zone }: { volumes: Volume["points"]; zone: Volume["zone"] }) {
  return (
    <details className={styles.same}>
      <summary>The limb’s volume as a table</summary>
      <table className={styles.limb}>
        <caption>The limb’s volume between the same levels, with its 90 % interval</caption>
        <thead>
          <tr>
            <th scope="col">measured on</th>
            <th scope="col" className="n">
              volume
            </th>
            <th scope="col" className="n">
              90 % interval
            </th>
          </tr>
        </thead>
        <tbody>
          {volumes.map(({ at, day, value, low, high }) => (
            <tr key={at}>
              <th scope="row">{longDay(day)}</th>
              <td className="n">{wholeMl(value)}</td>
              <td className="n">
                {formatNumber(low, 0)} to {wholeMl(high)}
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {zone && (
        <p className="soft">
          From {volumes.filter(({ at }) => at >= zone.from).map(({ day }) => longDay(day))[0]}: {zone.label}
        </p>
      )}
    </details>
  );
}

type Volume = ReturnType<typeof volumePoints>;
