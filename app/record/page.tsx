import type { Metadata } from "next";
import Link from "next/link";
import { show } from "@/app/_forms/show";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { PageHead } from "@/app/_parts/page-head";
import { StateMark } from "@/app/_parts/state-mark";
import { requireActor } from "@/lib/access/session";
import { clinicSettings } from "@/lib/records/clinic";
import { seeRecord, verifyRecord } from "@/lib/records/see-record";
import styles from "./record.module.css";

export const metadata: Metadata = { title: "Record" };

interface Asked {
  find?: string;
  page?: string;
  reads?: string;
  verify?: string;
}

export default async function RecordPage({ searchParams }: { searchParams: Promise<Asked> }) {
  const actor = await requireActor("/record");
  const { find = "", page: pageText = "1", reads, verify } = await searchParams;
  const page = Math.max(1, Number.parseInt(pageText, 10) || 1);
  const [{ entries, count, pages }, clinic] = await Promise.all([
    show(seeRecord(actor, { find, page, reads: reads === "yes" })),
    clinicSettings(),
  ]);
  const chain = verify === "yes" ? await verifyRecord(actor, null) : null;
  const timeZone = clinic?.timeZone ?? "UTC";
  const pageHref = (to: number) => `/record?${new URLSearchParams({ find, page: String(to), ...(reads ? { reads } : {}) })}`;
  return (
    <>
      <PageHead
        title="Record"
        about="Who did what, when. Entries are only ever added; each carries the digest of the one before."
      >
        <Link className="button quiet" href="/record?verify=yes" prefetch={false}>
          Verify the chain
        </Link>
      </PageHead>
      {chain && (
        <p role="status" className={styles.chain}>
          {chain.holds ? (
            <StateMark state="met" wrap>
              The chain holds over {chain.entries} entries. Its head is {chain.head.slice(0, 16)}…
            </StateMark>
          ) : (
            <StateMark state="forbids" wrap>
              The chain does not hold: {chain.why}.
            </StateMark>
          )}
        </p>
      )}
      <form className={styles.narrow}>
        <label>
          words, a person, or a record’s id
          <input type="search" name="find" defaultValue={find} />
        </label>
        <label className={styles.tick}>
          <input type="checkbox" name="reads" value="yes" defaultChecked={reads === "yes"} /> readings too
        </label>
        <button type="submit" className="quiet">
          Find
        </button>
        <span className="soft">
          {count} {count === 1 ? "entry" : "entries"}
        </span>
      </form>
      <table className={styles.entries}>
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
                {(entry.before || entry.after) && (
                  <details>
                    <summary>before and after</summary>
                    <Values label="before" json={entry.before} />
                    <Values label="after" json={entry.after} />
                    <p className={styles.digest}>{entry.digest}</p>
                  </details>
                )}
              </td>
              <td>
                {entry.recordKind}
                <span className={styles.digest}> {entry.recordId.slice(0, 8)}</span>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      {pages > 1 && (
        <nav aria-label="Pages" className={styles.pages}>
          {page > 1 && <Link href={pageHref(page - 1)}>Newer</Link>}
          <span>
            {page} of {pages}
          </span>
          {page < pages && <Link href={pageHref(page + 1)}>Older</Link>}
        </nav>
      )}
    </>
  );
}

function Values({ label, json }: { label: string; json: string | null }) {
  if (json === null) return null;
  return (
    <>
      <p className="soft">{label}</p>
      <pre className={styles.values}>{JSON.stringify(JSON.parse(json), null, 1)}</pre>
    </>
  );
}
