import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { Link } from "@/app/_parts/link";
import { formatNumber } from "@/app/_parts/numbers";
import { PageHead } from "@/app/_parts/page-head";
import { StateMark } from "@/app/_parts/state-mark";
import { AdjustmentHistory } from "@/app/episodes/adjustment-history";
import { type Found, foundWith } from "@/app/episodes/found";
import { FoundList } from "@/app/episodes/found-list";
import { numbersOfEpisode } from "@/app/episodes/mark-numbers-of-episode";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { type Decision, limitValue } from "@/lib/fit";
import { type SeenEpisode, seeEpisodeOfSocket } from "@/lib/records/see-episode";
import { FittingLinks } from "../fitting-links";
import styles from "./what-next.module.css";

export const metadata: Metadata = { title: "What next" };

/** After a fitting: what was found, what practitioners consider for it, and the ways on. */
export default async function WhatNextPage({ params }: { params: Promise<{ socket: string }> }) {
  const { socket: socketId } = await params;
  const actor = await requireActor(`/sockets/${socketId}/what-next`);
  const seen = await show(seeEpisodeOfSocket(actor, socketId));
  const { episode, bundle, limits, assessment } = seen;
  const socket = bundle.sockets.find(({ id }) => id === socketId);
  if (!socket) notFound();
  const found = foundWith(bundle, socketId, limits, numbersOfEpisode(episode));
  const forbidding = found.filter((finding) => finding.forbids);
  const forbids = forbidding.length > 0;
  const fitting = bundle.fittings
    .filter((each) => each.socketId === socketId)
    .toSorted((a, b) => Date.parse(a.at) - Date.parse(b.at))
    .at(-1);
  const when = fitting && `of ${dayAndTimeAt(fitting.at, bundle.clinic.timeZone)}`;
  const isLast = bundle.sockets.at(-1)?.id === socketId;
  const ways = { seen, socketId, number: socket.number, forbids };
  return (
    <>
      <PageHead title={`Socket ${socket.number}: what next`} about={<EpisodeLink episode={episode} />}>
        {fitting && when && <FittingLinks fitting={fitting} when={when} actor={actor} episode={episode} />}
      </PageHead>
      {isLast && (
        <p className="lead">
          <StateMark state={assessment.decision} wrap>
            {assessment.sentence}
          </StateMark>
        </p>
      )}
      {forbids && <Forbidden forbidding={forbidding} decision={isLast ? assessment.decision : undefined} />}
      <form action={`/episodes/${episode.id}/next-socket`} className={styles.form}>
        <input type="hidden" name="from" value={socketId} />
        <section aria-labelledby="found">
          <h2 id="found">What was found</h2>
          <WhatWasFound found={found} mayTake={may(actor, "specify a socket")} />
          {!forbids && <AdjustmentHistory actor={actor} episodeId={episode.id} kinds={kindsOffered(found)} />}
        </section>
        <section aria-labelledby="ways" className={styles.ways}>
          <h2 id="ways">Three ways on</h2>
          {forbids && (
            <p className={styles.physician}>
              {forbidding.every(({ early }) => early)
                ? "Something here forbids until a later look shows otherwise. Leave the socket off and look at the skin again: what follows waits for it."
                : "Something here forbids. Leave the socket off and ask the physician first: what follows waits for the answer."}
            </p>
          )}
          {may(actor, "specify a socket") ? (
            <Remake {...ways} />
          ) : (
            <p>A prosthetist decides whether it is altered or made anew.</p>
          )}
          <TryIt {...ways} />
        </section>
      </form>
      <section aria-labelledby="carry">
        <h2 id="carry">Or carry it</h2>
        <p className={styles.wide}>
          A small adjustment can go straight into the definitive socket: at most {limitValue(limits, "carry-mm")} mm,{" "}
          {limitValue(limits, "carry-percent")} % of volume or {limitValue(limits, "carry-trim-mm")} mm of trim, and{" "}
          {limitValue(limits, "carry-most")} of them; none where a mark was strong.{" "}
          <Link href={`/episodes/${episode.id}#carried`}>
            {may(actor, "carry an adjustment") ? "Carry an adjustment" : "See what is carried"}
          </Link>
        </p>
      </section>
      <section>
        <Advice />
      </section>
    </>
  );
}

/** What forbids the next step need not forbid a release yet: how the two sentences fit stands between them. */
function Forbidden({ forbidding, decision }: { forbidding: readonly Found[]; decision: Decision | undefined }) {
  const [first] = forbidding;
  const untilMin = first?.early?.untilMin;
  const waits = untilMin !== undefined && forbidding.every(({ early }) => early);
  return (
    <p className={`${styles.physician} ${styles.wide}`}>
      {decision !== undefined && decision !== "must not be released" && "That is about the release. Before it: "}
      {waits
        ? `what does not blanch forbids adjusting and wearing this socket until a look up to ${formatNumber(untilMin, 0)} minutes after doffing shows that it blanches or is gone. If it still does not blanch at ${formatNumber(untilMin, 0)} minutes, the socket must not be released, and the physician is asked.`
        : "what was found here forbids adjusting and wearing this socket until the physician has answered."}
    </p>
  );
}

function WhatWasFound({ found, mayTake }: { found: readonly Found[]; mayTake: boolean }) {
  if (found.length === 0)
    return (
      <p className="soft">
        Nothing on record asks for an adjustment: no concern, no mark, no pain. What was not looked at is not known.
      </p>
    );
  return (
    <>
      <p className={`soft ${styles.wide}`}>
        With what practitioners consider: common practice, no source. It suggests and never orders.
        {mayTake && " Tick what you take up; its amount and its reason are written with the next socket."}
      </p>
      <FoundList
        found={found}
        take={(offer) =>
          mayTake && (
            <label className={styles.tick}>
              <input type="checkbox" name="consider" value={offer.id} />
              <span>
                take up
                <span className="heard">
                  : {offer.kind}. {offer.what}
                </span>
              </span>
            </label>
          )
        }
      />
    </>
  );
}

const kindsOffered = (found: readonly Found[]) =>
  found.flatMap(({ considered }) => considered.flatMap(({ offers }) => offers.map(({ kind }) => kind)));

interface WayProps {
  seen: SeenEpisode;
  socketId: string;
  number: number;
  forbids: boolean;
}

function Remake({ number }: WayProps) {
  return (
    <>
      <div className={styles.way}>
        <p>
          <strong>Alter this socket.</strong> It gets the next number in the series, so that what was fitted stays on record as it
          was.
        </p>
        <button type="submit" name="how" value="alter" className="quiet">
          Alter socket {number}
        </button>
      </div>
      <div className={styles.way}>
        <p>
          <strong>Make another.</strong> Its dimensions follow from this one and from the adjustments.
        </p>
        <button type="submit" name="how" value="make" className="quiet">
          Specify the next socket
        </button>
      </div>
    </>
  );
}

/** No trial is offered where something forbids; a prosthetist who knows why it may be tried again finds the way on the socket's page. */
function TryIt({ socketId, forbids, seen: { episode } }: WayProps) {
  const state = episode.sockets.find(({ id }) => id === socketId)?.state;
  return (
    <div className={styles.way}>
      <p>
        <strong>Try it in wear.</strong>{" "}
        {forbids
          ? "Not now: no trial over a finding that forbids."
          : state === "fitted"
            ? "Ordinary work under the load of the planned device, with check-ins, then the skin."
            : `Not now: the socket is ${state ?? "not known"}.`}
      </p>
      {!forbids && state === "fitted" && (
        <Link className="button quiet" href={`/sockets/${socketId}/wear-trial`}>
          Plan a wear trial
        </Link>
      )}
    </div>
  );
}
