import { dayAt, longDay, shortDay } from "@/app/_parts/dates";
import { formatNumber } from "@/app/_parts/numbers";
import { type ProfileLine, ProfilesChart } from "@/app/_parts/profiles-chart";
import type { Bundle, DimensionsBeside, LimbMeasurement, SocketAtLevel } from "@/lib/fit";
import type { Comparison } from "./comparison";
import styles from "./side-by-side.module.css";

/** Inside dimensions by level over the limb, drawn and as a table. */
export function Dimensions({ comparison: { dimensions, sockets }, bundle }: { comparison: Comparison; bundle: Bundle }) {
  const { levels, notes, columns } = dimensions;
  const limbs = limbsOf(dimensions);
  const lines: ProfileLine[] = [
    ...limbs.map(({ at, stations }) => ({ label: `limb, ${dayOf(at, bundle)}`, of: "limb" as const, stations })),
    ...columns.flatMap(({ socketId, number }) => {
      const stations = bundle.sockets.find(({ id }) => id === socketId)?.stations ?? [];
      return stations.length > 1 ? [{ label: `socket ${number}`, of: "socket" as const, stations }] : [];
    }),
  ];
  return (
    <section aria-labelledby="dimensions">
      <h2 id="dimensions">Inside dimensions by level</h2>
      {sockets.some(({ own }) => !own) && <p className="soft">Those of another limb or episode are not laid over these.</p>}
      {levels.length === 0 ? (
        <p className="soft">No inside dimensions are recorded.</p>
      ) : (
        <div className={`${styles.dimensions} ${limbs.length + columns.length > 5 ? styles.stacked : ""}`}>
          <ProfilesChart
            lines={lines}
            stationsFrom={bundle.episode.stationsFrom}
            summary={`Inside circumferences of ${columns.map(({ number }) => `socket ${number}`).join(", ")} by level, over the limb, as in the table.`}
          />
          <LevelTable dimensions={dimensions} limbs={limbs} bundle={bundle} />
        </div>
      )}
      {notes.map((note) => (
        <p key={note} className="soft">
          {note}
        </p>
      ))}
    </section>
  );
}

const dayOf = (at: string, { clinic }: Bundle): string => shortDay(dayAt(at, clinic.timeZone));

/** The measurements that the sockets are held against, each once, the earliest first. */
function limbsOf({ columns }: DimensionsBeside): LimbMeasurement[] {
  const all = columns.flatMap(({ limb }) => limb ?? []);
  return [...new Map(all.map((limb) => [limb.id, limb])).values()].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
}

interface TableProps {
  dimensions: DimensionsBeside;
  limbs: readonly LimbMeasurement[];
  bundle: Bundle;
}

function LevelTable({ dimensions: { levels, columns }, limbs, bundle }: TableProps) {
  const isBetween = levels.some(({ sockets }) => sockets.some(({ interpolated }) => interpolated));
  return (
    <table className={`${styles.levels} ${styles.stacking}`}>
      <caption className="soft">
        Circumference in mm; under each socket how much tighter it is than the limb as it was measured for it.
        {isBetween && " ≈ lies between two of its levels."}
      </caption>
      <thead>
        <tr>
          <th scope="col">from the {bundle.episode.stationsFrom}, mm</th>
          {limbs.map(({ id, at }) => (
            <th key={id} scope="col" className="n">
              limb<small>{limbs.length > 1 ? dayOf(at, bundle) : longDay(dayAt(at, bundle.clinic.timeZone))}</small>
            </th>
          ))}
          {columns.map(({ socketId, number, limb }) => (
            <th key={socketId} scope="col" className="n">
              socket {number}
              {limbs.length > 1 && limb && <small>limb of {dayOf(limb.at, bundle)}</small>}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {levels.map(({ distanceMm, sockets }) => (
          <tr key={distanceMm}>
            <th scope="row">
              {formatNumber(distanceMm, 0)}
              <span className={styles.narrow}>
                {"\u00a0mm from the "}
                {bundle.episode.stationsFrom}
              </span>
            </th>
            {limbs.map((limb) => (
              <td key={limb.id} className="n">
                <span className={styles.narrow}>limb{limbs.length > 1 && `, ${dayOf(limb.at, bundle)}`}: </span>
                {limbAt(limb, distanceMm)}
              </td>
            ))}
            {sockets.map((socket, column) => (
              <td key={columns[column]?.socketId} className="n">
                <span className={styles.narrow}>socket {columns[column]?.number}: </span>
                <AtLevel socket={socket} />
              </td>
            ))}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function AtLevel({
  socket: { circumferenceMm, interpolated, compressionPercent, standardErrorPercent },
}: {
  socket: SocketAtLevel;
}) {
  if (circumferenceMm === undefined) return <>–</>;
  return (
    <>
      {interpolated && "≈\u00a0"}
      {formatNumber(circumferenceMm, 1)}
      {compressionPercent !== undefined && (
        <small className={styles.whole}>
          {formatNumber(compressionPercent, 1)}
          {standardErrorPercent !== undefined && ` ± ${formatNumber(standardErrorPercent, 1)}`}
          {"\u00a0%"}
        </small>
      )}
    </>
  );
}

const limbAt = ({ stations }: LimbMeasurement, distanceMm: number): string => {
  const there = stations.find((station) => station.distanceMm === distanceMm);
  return there ? formatNumber(there.circumferenceMm, 1) : "–";
};
