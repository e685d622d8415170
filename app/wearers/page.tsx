import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Empty } from "@/app/_parts/empty";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { type MarkedState, StateMark } from "@/app/_parts/state-mark";
import { requireActor } from "@/lib/access/session";
import { findWearers } from "@/lib/records/see-wearers";
import styles from "./wearers.module.css";

export const metadata: Metadata = { title: "Wearers" };

export default async function Wearers({ searchParams }: { searchParams: Promise<{ find?: string }> }) {
  const actor = await requireActor("/wearers");
  const { find = "" } = await searchParams;
  const { wearers } = await show(findWearers(actor, { find }));
  return (
    <>
      <PageHead
        title={find === "" ? "Wearers" : `Wearers found for “${find}”`}
        about={find === "" ? undefined : <Link href="/wearers">Show everyone</Link>}
      >
        <Link className="button" href="/wearers/new">
          Add a wearer
        </Link>
      </PageHead>
      {wearers.length === 0 ? (
        <Empty
          title={find === "" ? "Nobody is here yet" : "Nobody was found"}
          first={{ href: "/wearers/new", label: "Add a wearer" }}
        >
          {find === ""
            ? "People who are fitted stand here, with their episodes."
            : "Names and clinic numbers were looked through. A part of either is enough."}
        </Empty>
      ) : (
        <table className={styles.list}>
          <thead>
            <tr>
              <th scope="col">Wearer</th>
              <th scope="col">Number</th>
              <th scope="col">Born</th>
              <th scope="col">Episodes</th>
            </tr>
          </thead>
          <tbody>
            {wearers.map((wearer) => (
              <tr key={wearer.id}>
                <td>
                  <Link href={`/wearers/${wearer.id}`}>{wearer.name}</Link>
                </td>
                <td>{wearer.clinicNumber}</td>
                <td>{wearer.birthOn?.slice(0, 4) ?? "not known"}</td>
                <td>
                  {wearer.episodes.length === 0 && <span className="soft">none yet</span>}
                  <ul className={styles.episodes}>
                    {wearer.episodes.map((episode) => (
                      <li key={episode.id}>
                        <Link href={`/episodes/${episode.id}`}>
                          {episode.side} {episode.level}
                        </Link>
                        <span className="soft">{episode.stage}</span>
                        {episode.decision && <StateMark state={episode.decision as MarkedState} />}
                      </li>
                    ))}
                  </ul>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      )}
    </>
  );
}
