import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { dayAt, daysBetween, dueWords, longDay } from "@/app/_parts/dates";
import { Empty } from "@/app/_parts/empty";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { requireActor } from "@/lib/access/session";
import { clinicSettings } from "@/lib/records/clinic";
import { now } from "@/lib/records/clock";
import { seeWorkshop, type WorkshopSocket } from "@/lib/records/see-workshop";
import styles from "./workshop.module.css";

export const metadata: Metadata = { title: "Workshop" };

const groups = [
  { state: "planned", heading: "To make" },
  { state: "being made", heading: "Being made" },
  { state: "sent", heading: "Sent, not yet at hand" },
  { state: "at hand", heading: "At hand, not yet fitted" },
] as const;

/** A socket that has been on its way, or lain at hand, for longer than this stands out. */
const lateAfterDays = 7;

export default async function Workshop() {
  const actor = await requireActor("/workshop");
  const [{ sockets, releases }, clinic] = await Promise.all([show(seeWorkshop(actor, null)), clinicSettings()]);
  const timeZone = clinic?.timeZone ?? "UTC";
  const today = dayAt(now(), timeZone);
  return (
    <>
      <PageHead title="Workshop" about="Orders go by clinic numbers; the bench sees no names and no clinical notes." />
      {sockets.length === 0 && releases.length === 0 && (
        <Empty title="Nothing to make">Sockets that a prosthetist specifies stand here until they are fitted.</Empty>
      )}
      {releases.length > 0 && (
        <section aria-labelledby="releases">
          <h2 id="releases">Released, definitive socket to make</h2>
          <ul className={styles.list}>
            {releases.map((release) => (
              <li key={release.id}>
                <Link href={`/releases/${release.id}`}>
                  <strong>{release.episode.wearer.clinicNumber}</strong>, definitive from socket {release.socket.number}
                </Link>
                <span className="soft">
                  {release.episode.side} {release.episode.level}
                </span>
                <span className="soft">
                  released {longDay(dayAt(release.at, timeZone))}
                  {release.benchReadings.length === 0
                    ? " · sheet not read yet"
                    : ` · sheet read by ${release.benchReadings.map(({ byName }) => byName).join(", ")}`}
                </span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {groups.map(({ state, heading }) => {
        const group = sockets.filter((socket) => socket.state === state);
        return (
          group.length > 0 && (
            <section key={state} aria-label={heading}>
              <h2>
                {heading}, {group.length}
              </h2>
              <ul className={styles.list}>
                {group.map((socket) => (
                  <OrderLine key={socket.id} socket={socket} today={today} timeZone={timeZone} />
                ))}
              </ul>
            </section>
          )
        );
      })}
    </>
  );
}

function OrderLine({ socket, today, timeZone }: { socket: WorkshopSocket; today: string; timeZone: string }) {
  const since = dayAt(socket.stateSince, timeZone);
  const days = daysBetween(since, today);
  const late = socket.neededOn ? socket.neededOn < today : days > lateAfterDays;
  return (
    <li>
      <Link href={`/sockets/${socket.id}`}>
        <strong>{socket.episode.wearer.clinicNumber}</strong>, socket {socket.number}
      </Link>
      <span className="soft">
        {socket.episode.side} {socket.episode.level}
        {socket.material && ` · ${socket.material}`}
      </span>
      <span className={late ? styles.late : "soft"}>
        {socket.neededOn
          ? socket.neededOn < today
            ? dueWords(socket.neededOn, today)
            : `needed ${dueWords(socket.neededOn, today)}`
          : `for ${days} ${days === 1 ? "day" : "days"}`}
      </span>
    </li>
  );
}
