import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Choose } from "@/app/_parts/choices";
import { dayAndTimeAt, dayAt, longDay } from "@/app/_parts/dates";
import { DateField, HiddenField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { formatNumber } from "@/app/_parts/numbers";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { explainDimensions, type SocketState, type Station } from "@/lib/fit";
import { clinicSettings } from "@/lib/records/clinic";
import { toClinicTime } from "@/lib/records/clinic-time";
import { now } from "@/lib/records/clock";
import { waysOn } from "@/lib/records/move-socket";
import { seeEpisodeOfSocket } from "@/lib/records/see-episode";
import { type SocketOrder, seeSocketOrder } from "@/lib/records/see-workshop";
import { move } from "./actions";
import { SocketAdjustments } from "./adjustments";
import { SocketFittings } from "./fittings";
import styles from "./socket.module.css";

export const metadata: Metadata = { title: "Socket" };

/** One socket as the bench reads it: what it is, what separates it from the one before, and where it is now. */
export default async function SocketPage({ params }: { params: Promise<{ socket: string }> }) {
  const { socket: socketId } = await params;
  const actor = await requireActor(`/sockets/${socketId}`);
  const [socket, clinic] = await Promise.all([show(seeSocketOrder(actor, socketId)), clinicSettings()]);
  const timeZone = clinic?.timeZone ?? "UTC";
  const clinician = may(actor, "see wearers");
  const state = socket.state as SocketState; // the column holds only what the commands write
  const ways = waysOn(state, actor.role);
  const seen = clinician ? await show(seeEpisodeOfSocket(actor, socketId)) : undefined;
  return (
    <>
      <PageHead
        title={`Socket ${socket.number} of ${socket.episode.wearer.clinicNumber}`}
        about={`${socket.episode.side} ${socket.episode.level} · ${socket.state} since ${longDay(dayAt(socket.stateSince, timeZone))}`}
      >
        {clinician && (
          <Link className="button quiet" href={`/episodes/${socket.episodeId}`}>
            The episode
          </Link>
        )}
        {may(actor, "specify a socket") && state === "planned" && (
          <Link className="button quiet" href={`/sockets/${socket.id}/change`}>
            Change
          </Link>
        )}
        {clinician && (state === "at hand" || state === "sent" || state === "fitted") && (
          <Link className="button" href={`/sockets/${socket.id}/fitting`}>
            Record a fitting
          </Link>
        )}
        {clinician && (state === "at hand" || state === "fitted") && (
          <Link className="button quiet" href={`/sockets/${socket.id}/wear-trial`}>
            Plan a wear trial
          </Link>
        )}
      </PageHead>
      <div className={styles.two}>
        <section aria-labelledby="dimensions">
          <h2 id="dimensions">Inside dimensions</h2>
          <Dimensions socket={socket} />
        </section>
        <section aria-labelledby="order">
          <h2 id="order">Order</h2>
          <dl className={styles.facts}>
            {facts(socket, timeZone).map(([what, how]) => (
              <div key={what}>
                <dt>{what}</dt>
                <dd>{how}</dd>
              </div>
            ))}
          </dl>
        </section>
      </div>
      <SocketAdjustments actor={actor} socket={socket} seen={seen} />
      {seen && <SocketFittings actor={actor} socketId={socket.id} seen={seen} />}
      {ways.length > 0 && (
        <section aria-labelledby="move" className="not-on-paper">
          <h2 id="move">Where is it now?</h2>
          <ActionForm action={move}>
            <HiddenField name="socketId" value={socket.id} />
            <HiddenField name="version" value={String(socket.version)} />
            <Choose name="state" label="It is" options={ways.map((way) => ({ value: way, label: way }))} />
            <DateField name="at" label="Since" withTime first={toClinicTime(now(), timeZone)} />
            <TextField name="note" label="Note" optional size={40} hint="The bench reads it: no clinical words." />
            <SubmitButton>Save</SubmitButton>
          </ActionForm>
        </section>
      )}
      <section aria-labelledby="states">
        <h2 id="states">Its way so far</h2>
        <ol className={styles.way}>
          {socket.stateChanges.map((change) => (
            <li key={change.id}>
              <strong>{change.state}</strong> {dayAndTimeAt(change.at, timeZone)}, {change.byName}
              {change.note && <small> {change.note}</small>}
            </li>
          ))}
        </ol>
      </section>
    </>
  );
}

function facts(socket: SocketOrder, timeZone: string): [string, string][] {
  const lines: [string, string | null][] = [
    ["material", socket.material],
    ["wall", socket.wallMm === null ? null : `${socket.wallMm} mm`],
    ["length", socket.lengthMm === null ? null : `${socket.lengthMm} mm`],
    ["suspension", socket.suspension ?? socket.episode.suspension],
    ["trim lines", socket.trimLines],
    ["distances from", `${socket.episode.stationsFrom}; landmark: ${socket.episode.landmark}`],
    ["needed on", socket.neededOn && longDay(socket.neededOn)],
    ["for the bench", socket.benchNote],
    ["specified by", `${socket.specifiedByName}, ${longDay(dayAt(socket.specifiedAt, timeZone))}`],
  ];
  return lines.flatMap(([what, how]) => (how ? [[what, how]] : []));
}

/** Level by level: the limb, the socket before, what follows from the adjustments, and what this socket is to be. */
function Dimensions({ socket }: { socket: SocketOrder }) {
  const { stations: own, limb, before, adjustments, where } = socket;
  if (own.length === 0) return <p className="soft">No inside dimensions are recorded: the bench cannot make it from this.</p>;
  const explained = before.length > 0 ? explainDimensions(before, own, adjustments, where) : [];
  const at = (stations: Station[], distanceMm: number) =>
    stations.find((station) => station.distanceMm === distanceMm)?.circumferenceMm;
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">from {socket.episode.stationsFrom}, mm</th>
          <th scope="col" className="n">
            limb
          </th>
          {socket.derivedFrom && (
            <th scope="col" className="n">
              socket {socket.derivedFrom.number}
            </th>
          )}
          <th scope="col" className="n">
            this socket
          </th>
          {socket.derivedFrom && <th scope="col">not explained</th>}
        </tr>
      </thead>
      <tbody>
        {own.map(({ distanceMm, circumferenceMm }) => {
          const level = explained.find((entry) => entry.distanceMm === distanceMm);
          return (
            <tr key={distanceMm}>
              <td>{formatNumber(distanceMm, 0)}</td>
              <td className="n">{numberOrDash(at(limb, distanceMm))}</td>
              {socket.derivedFrom && <td className="n">{numberOrDash(at(before, distanceMm))}</td>}
              <td className="n">
                <strong>{formatNumber(circumferenceMm, 1)}</strong>
              </td>
              {socket.derivedFrom && (
                <td className={level?.unexplained ? styles.unexplained : "soft"}>
                  {level ? `${formatNumber(level.differenceMm, 1)} mm` : "no level there"}
                </td>
              )}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

const numberOrDash = (value: number | undefined): string => (value === undefined ? "–" : formatNumber(value, 1));
