import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { timeAt } from "@/app/_parts/dates";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { Link } from "@/app/_parts/link";
import { formatNumber } from "@/app/_parts/numbers";
import { PageHead } from "@/app/_parts/page-head";
import { SkinOverTime } from "@/app/_parts/skin-over-time";
import { feelingWords, stopSignWords } from "@/app/_parts/skin-words";
import { StateMark } from "@/app/_parts/state-mark";
import { requireActor } from "@/lib/access/session";
import { limitsOfVersion, replayWearTrial, type TrialEvent, trialLimitsOf, type WearTrial } from "@/lib/fit";
import { clinicSettings } from "@/lib/records/clinic";
import { now } from "@/lib/records/clock";
import { seeEpisodeOfTrial } from "@/lib/records/see-episode";
import { EventForms } from "./event-forms";
import { HearChanges } from "./hear-changes";
import { OwnLink } from "./own-link";
import { SetAside } from "./set-aside";
import styles from "./trial.module.css";
import { TrialClock } from "./trial-clock";
import { TrialCourse } from "./trial-course";

export const metadata: Metadata = { title: "Wear trial" };

export default async function TrialPage({ params }: { params: Promise<{ trial: string }> }) {
  const { trial: trialId } = await params;
  const actor = await requireActor(`/trials/${trialId}`);
  const [{ episode, bundle, limits: inForce, setAside }, clinic] = await Promise.all([
    show(seeEpisodeOfTrial(actor, trialId)),
    clinicSettings(),
  ]);
  const timeZone = clinic?.timeZone ?? "UTC";
  const record = bundle.wearTrials.find(({ id }) => id === trialId);
  const row = episode.wearTrials.find(({ id }) => id === trialId);
  if (!record || !row) throw new Error("the trial is in its episode");
  const asOf = now();
  const socket = episode.sockets.find(({ id }) => id === record.socketId);
  const signed = episode.signOffs.find((signOff) => signOff.socketId === record.socketId && signOff.withdrawal === null);
  // What was signed is shown by the limits of its day.
  const limits = trialLimitsOf(signed ? limitsOfVersion(signed.rulesVersion) : inForce);
  const trial = replayWearTrial(record.plan, record.events, asOf.toISOString(), limits);
  const { plan } = record;
  const alarm = trial.reasons.find(
    ({ about, state }) => (about === "pain" && state === "forbids") || (about === "feelings" && state === "not met"),
  );
  const deviceAt = new Map(row.events.flatMap(({ id, deviceAt: at }) => (at ? [[id, at.toISOString()] as const] : [])));
  const events = [...record.events].sort((a, b) => Date.parse(a.at) - Date.parse(b.at));
  return (
    <>
      {!signed && <HearChanges trialId={trialId} />}
      <PageHead title={`Wear trial, socket ${socket?.number ?? ""}`} about={<EpisodeLink episode={episode} />} />
      <p>
        {formatNumber(plan.minutes, 0)} minutes, a check-in every {formatNumber(plan.intervalMin, 0)}
        {plan.loadKg !== undefined &&
          `, ${plan.loadKg} kg${plan.loadDistanceMm === undefined ? "" : ` at ${plan.loadDistanceMm} mm`}`}
        : {plan.activities.join(", ")}.{row.watchedBy && ` Watched by ${row.watchedBy}.`}{" "}
        {row.enteredAfterwards && <strong>Entered afterwards.</strong>}
      </p>
      <section aria-labelledby="state">
        <h2 id="state">{stateWords[trial.state]}</h2>
        {trial.state === "running" && (
          <TrialClock
            wornMinutes={trial.wornMinutes}
            plannedMinutes={plan.minutes}
            dueAt={trial.nextCheckInDueAt ?? null}
            asOf={asOf.toISOString()}
          />
        )}
        {(trial.state === "ended" || trial.state === "stopped") && <Verdict trial={trial} looks={record.inspections.length} />}
        {trial.problems.length > 0 && (
          <ul className={styles.problems}>
            {trial.problems.map((problem) => (
              <li key={problem.why}>{problem.why.replace(/ \(event [^)]*\)/, "")}</li>
            ))}
          </ul>
        )}
      </section>
      {(trial.state === "running" || trial.state === "paused") && alarm && (
        <p className={styles.alarm} role="alert">
          <strong>Stop the trial now.</strong> {alarm.why} Choose the stop sign below, doff the socket and look at the skin.
        </p>
      )}
      {trial.state === "stopped" && (
        <p className={styles.alarm} role="note">
          <strong>Stopped.</strong> Doff the socket now and look at the skin. Call a physician for broken skin, loss of feeling, a
          cold limb, colour change or swelling. A trial with a stop sign is never passed.
        </p>
      )}
      {(trial.state === "running" || trial.state === "paused") && !signed && (
        <a className={`button stop ${styles.reach}`} href="#stop">
          Stop the trial
        </a>
      )}
      {!signed && !row.enteredAfterwards && trial.state !== "ended" && trial.state !== "stopped" && (
        <p>
          {/* A program of its own, not a page of this one: it runs without a network. */}
          <a className="button" href={`/live/trial#${trialId}`}>
            {trial.state === "planned" ? "Run it on this device" : "Go on with it on this device"}
          </a>{" "}
          <span className="soft">One screen for phone or tablet; it goes on without a network.</span>
        </p>
      )}
      {signed ? (
        <p>{signed.byName} signed for this socket; what happened in its trial is locked.</p>
      ) : (
        <EventForms
          trialId={trialId}
          state={trial.state}
          afterwards={row.enteredAfterwards}
          began={trial.beganAt !== null}
          ended={trial.endedAt !== null}
          doffed={trial.doffedAt !== null}
          checkIns={events.flatMap((event) =>
            event.kind === "check-in"
              ? [{ id: event.id, label: `${timeAt(event.at, timeZone)}: comfort ${event.comfort}, pain ${event.pain}` }]
              : [],
          )}
        />
      )}
      <TrialCourse record={record} trial={trial} limits={limits} timeZone={timeZone} />
      {events.length > 0 && (
        <section aria-labelledby="events">
          <h2 id="events">What happened</h2>
          <table className={styles.events}>
            <thead>
              <tr>
                <th scope="col">Time</th>
                <th scope="col">What</th>
                <th scope="col">Said by</th>
              </tr>
            </thead>
            <tbody>
              {events.map((event) => (
                <tr key={event.id}>
                  <td>{timeAt(event.at, timeZone)}</td>
                  <td>
                    {eventWords(event)}
                    {deviceAt.has(event.id) && (
                      <span className="soft"> The device’s clock said {timeAt(deviceAt.get(event.id) ?? "", timeZone)}.</span>
                    )}
                  </td>
                  <td>{event.reportedBy ?? ""}</td>
                </tr>
              ))}
            </tbody>
          </table>
        </section>
      )}
      <SetAside events={setAside.filter((one) => one.trialId === trialId)} timeZone={timeZone} />
      <OwnLink
        actor={actor}
        trialId={trialId}
        wearer={episode.wearer}
        isOpen={!signed && trial.endedAt === null && trial.state !== "stopped"}
        timeZone={timeZone}
      />
      <section id="skin" aria-labelledby="looks">
        <h2 id="looks">Looks at the skin</h2>
        {record.inspections.length === 0 && (
          <p className="soft">
            Not looked at yet. Look within five minutes of doffing, and again until the marks are gone or 20 minutes have passed.
          </p>
        )}
        <SkinOverTime inspections={record.inspections} limb={limbShapeOf(bundle, socket)} timeZone={timeZone} />
        {!signed && (trial.state === "ended" || trial.state === "stopped") && (
          <p>
            <Link className="button" href={`/trials/${trialId}/look`}>
              {record.inspections.length === 0 ? "Record a look at the skin" : "Record another look"}
            </Link>
          </p>
        )}
      </section>
      <section>
        <Advice />
      </section>
    </>
  );
}

const stateWords: Record<WearTrial["state"], string> = {
  planned: "Planned",
  running: "Running",
  paused: "Paused",
  ended: "Ended",
  stopped: "Stopped",
};

/** How the wearing went. What the skin shows afterwards decides as well, and is not in this verdict. */
function Verdict({ trial, looks }: { trial: WearTrial; looks: number }) {
  const state =
    trial.verdict === "passed"
      ? "met"
      : trial.verdict === "stopped"
        ? "forbids"
        : trial.verdict === "incomplete"
          ? "unknown"
          : trial.verdict === "not passed"
            ? "not met"
            : "close";
  return (
    <>
      <p>
        <StateMark state={state}>wearing: {trial.verdict}</StateMark>, worn {formatNumber(trial.wornMinutes, 1)} minutes.{" "}
        {looks === 0 ? (
          <strong>The skin has not been looked at: nothing is decided yet.</strong>
        ) : (
          "The skin is judged by its own checks."
        )}
      </p>
      <ul>
        {trial.reasons
          .filter((reason) => reason.state !== "met")
          .map((reason) => (
            <li key={reason.why}>{reason.why}</li>
          ))}
      </ul>
    </>
  );
}

function eventWords(event: TrialEvent): string {
  switch (event.kind) {
    case "begun":
      return "begun";
    case "check-in": {
      const felt = event.feelings.map(({ kind, aspect, third }) =>
        [feelingWords[kind], aspect, third && `${third} third`].filter(Boolean).join(" "),
      );
      return `check-in: comfort ${event.comfort}, pain ${event.pain}, exertion ${event.exertion}${felt.length > 0 ? `; felt ${felt.join(", ")}` : ""}`;
    }
    case "stop-sign":
      return `stop sign: ${stopSignWords[event.sign]}${event.note ? ` (${event.note})` : ""}`;
    case "corrected":
      return `check-in put right: ${[event.comfort !== undefined && `comfort ${event.comfort}`, event.pain !== undefined && `pain ${event.pain}`, event.exertion !== undefined && `exertion ${event.exertion}`].filter(Boolean).join(", ")}${event.note ? ` (${event.note})` : ""}`;
    default:
      return event.kind;
  }
}
