import { dayAndTimeAt } from "@/app/_parts/dates";
import { Link } from "@/app/_parts/link";
import { formatNumber } from "@/app/_parts/numbers";
import { type EpisodeWhole, fittingsThatCount } from "@/lib/records/bundle-of";
import styles from "./episode.module.css";

interface Happened {
  key: string;
  at: Date;
  who: string;
  what: React.ReactNode;
}

const minuteOf = (at: Date): number => Math.floor(at.getTime() / 60_000);

/** What was recorded in this episode, the newest first. */
export function History({ episode, timeZone }: { episode: EpisodeWhole; timeZone: string }) {
  const numberOf = (socketId: string) => episode.sockets.find(({ id }) => id === socketId)?.number ?? "?";
  const happened: Happened[] = [
    ...episode.measurements.map((row) => ({
      key: row.id,
      at: row.at,
      who: row.byName,
      what: `limb measured by ${row.method}${row.note ? `: ${row.note}` : ""}`,
    })),
    ...episode.sockets.map((row) => ({
      key: row.id,
      at: row.specifiedAt,
      who: row.specifiedByName,
      what: <Link href={`/sockets/${row.id}`}>socket {row.number} specified</Link>,
    })),
    ...fittingsThatCount(episode.fittings).map((row) => ({
      key: row.id,
      at: row.at,
      who: row.byName,
      what: (
        <>
          <Link href={`/fittings/${row.id}`}>
            socket {numberOf(row.socketId)} fitted, {row.place}
          </Link>
          {row.why && " (put right)"}
          {row.comfort !== null && `, comfort ${formatNumber(row.comfort, 0)}`}
          {row.words && (
            <>
              {": "}
              <q>{row.words}</q>
            </>
          )}
          {row.note && <small> {row.note}</small>}
        </>
      ),
    })),
    ...episode.wearTrials.map((row) => ({
      key: row.id,
      at: row.events[0]?.at ?? row.plannedAt,
      who: row.plannedByName,
      what: (
        <>
          <Link href={`/trials/${row.id}`}>wear trial of socket {numberOf(row.socketId)}</Link>,{" "}
          {row.verdict && (row.state === "ended" || row.state === "stopped") ? `wearing ${row.verdict}` : row.state}
        </>
      ),
    })),
  ]
    .reverse()
    // What happened in one minute stands in the order of the work: the list above is in that order.
    .sort((a, b) => minuteOf(b.at) - minuteOf(a.at));
  return (
    <section aria-labelledby="history">
      <h2 id="history">History</h2>
      {happened.length === 0 ? (
        <p className="soft">Nothing was recorded yet. Begin with the limb: its size is what everything is compared with.</p>
      ) : (
        <table className={styles.history}>
          <thead>
            <tr>
              <th scope="col">When</th>
              <th scope="col">What</th>
              <th scope="col">By</th>
            </tr>
          </thead>
          <tbody>
            {happened.map((entry) => (
              <tr key={entry.key}>
                <td className={styles.when}>{dayAndTimeAt(entry.at, timeZone)}</td>
                <td>{entry.what}</td>
                <td>{entry.who}</td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </section>
  );
}
