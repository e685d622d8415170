import { dayAndTimeAt } from "@/app/_parts/dates";
import { Link } from "@/app/_parts/link";
import type { seeRecord } from "@/lib/records/see-record";
import { changedFields } from "./changed-fields";
import styles from "./record.module.css";

type Entry = Awaited<ReturnType<typeof seeRecord>>["entries"][number];

export function Entries({ entries, timeZone }: { entries: readonly Entry[]; timeZone: string }) {
  return (
    <table className={styles.entries} aria-label="Entries">
      <thead>
        <tr>
          <th scope="col" className="n">
            No.
          </th>
          <th scope="col">When</th>
          <th scope="col">Who</th>
          <th scope="col">What</th>
          <th scope="col">On</th>
        </tr>
      </thead>
      <tbody>
        {entries.map((entry) => (
          <tr key={entry.position}>
            <td className="n">{entry.position}</td>
            <td>{dayAndTimeAt(entry.at, timeZone)}</td>
            <td>
              {entry.actorName}, {entry.actorRole}
            </td>
            <td>
              {entry.action}
              <Change entry={entry} timeZone={timeZone} />
            </td>
            <td>
              {entry.recordKind}{" "}
              <Link
                href={`/record?record=${encodeURIComponent(entry.recordId)}`}
                className={styles.digest}
                aria-label={`everything on ${entry.recordKind} ${entry.recordId.slice(0, 8)}`}
              >
                {entry.recordId.slice(0, 8)}
              </Link>
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

function Change({ entry, timeZone }: { entry: Entry; timeZone: string }) {
  if (entry.before === null && entry.after === null) return null;
  const isNew = entry.before === null;
  return (
    <details>
      <summary>{isNew ? "what was written" : "before and after"}</summary>
      <table className={styles.changed} aria-label={`What entry ${entry.position} changed`}>
        <thead>
          <tr>
            <th scope="col">field</th>
            {!isNew && <th scope="col">before</th>}
            <th scope="col">{isNew ? "written" : "after"}</th>
          </tr>
        </thead>
        <tbody>
          {changedFields(entry, timeZone).map(({ field, before, after }) => (
            <tr key={field}>
              <th scope="row">{field}</th>
              {!isNew && <td>{before ?? <NotNoted />}</td>}
              <td>{after ?? <NotNoted />}</td>
            </tr>
          ))}
        </tbody>
      </table>
      <details>
        <summary>as it is kept</summary>
        <Kept label="before" json={entry.before} />
        <Kept label="after" json={entry.after} />
        <p className={styles.digest}>digest {entry.digest}</p>
      </details>
    </details>
  );
}

const NotNoted = () => (
  <span className="soft">
    <span aria-hidden="true">–</span>
    <span className="heard">not noted</span>
  </span>
);

function Kept({ label, json }: { label: string; json: string | null }) {
  if (json === null) return null;
  return (
    <>
      <p className="soft">{label}</p>
      <pre className={styles.values}>{JSON.stringify(JSON.parse(json), null, 1)}</pre>
    </>
  );
}
