import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { dayAt, dueWords, longDay, shortDay } from "@/app/_parts/dates";
import { GateList } from "@/app/_parts/gate-list";
import { Link } from "@/app/_parts/link";
import { formatNumber } from "@/app/_parts/numbers";
import { PageHead } from "@/app/_parts/page-head";
import { SocketLine } from "@/app/_parts/socket-line";
import { StateMark } from "@/app/_parts/state-mark";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { type Assessment, type Series, seriesOf, sourceKinds } from "@/lib/fit";
import { now } from "@/lib/records/clock";
import { awaitsCountersignature, releaseMeaning } from "@/lib/records/meanings";
import { seeBenchQuestions } from "@/lib/records/see-bench-questions";
import { type SeenEpisode, seeEpisode } from "@/lib/records/see-episode";
import { Carried } from "./carried";
import { Cautions } from "./cautions";
import styles from "./episode.module.css";
import { History } from "./history";
import { LimbSize, volumes } from "./limb-size";
import { Marks } from "./marks";
import { beadsOf, isTried, lineAdjustment } from "./series";
import { SetAsideNotice } from "./set-aside";
import { Signatures } from "./signatures";
import { wayOfStep, wayToSettle } from "./ways";

export const metadata: Metadata = { title: "Episode" };

/** What is most often compared: the latest socket that was tried with the one tried before it. */
const lastTwo = (series: Series): string[] =>
  series.findings
    .filter(({ socketId }) => isTried(series, socketId))
    .slice(-2)
    .map(({ socketId }) => socketId);

export default async function EpisodePage({ params }: { params: Promise<{ episode: string }> }) {
  const { episode: episodeId } = await params;
  const actor = await requireActor(`/episodes/${episodeId}`);
  const [seen, questions] = await Promise.all([show(seeEpisode(actor, episodeId)), seeBenchQuestions(actor, episodeId)]);
  const { episode, bundle, assessment, limits } = seen;
  const { timeZone } = bundle.clinic;
  const today = dayAt(now(), timeZone);
  const series = seriesOf(bundle, { limits });
  const place = { episodeId, subject: assessment.subject, decision: assessment.decision };
  const last = volumes(bundle, limits).at(-1);
  const released = episode.signOffs.find(
    (signOff) => signOff.meaning === releaseMeaning && !signOff.withdrawal && !awaitsCountersignature(signOff),
  );

  return (
    <>
      <PageHead title={`${episode.wearer.name}, ${episode.side} ${episode.level}`} about={aboutLimb(seen)}>
        <Link className="button quiet" href={`/episodes/${episode.id}/change`}>
          Change
        </Link>
        <a className="button quiet" href={`/episodes/${episode.id}/bundle`} download>
          Download the episode
        </a>
      </PageHead>
      <Cautions bundle={bundle} wearerId={episode.wearerId} episodeId={episode.id} mayRead={may(actor, "acknowledge cautions")} />
      <SetAsideNotice events={seen.setAside} episode={episode} />
      <section className={styles.decision} aria-labelledby="decision">
        <div>
          <p>
            <StateMark state={assessment.decision} />
            {(episode.stage === "on hold" || episode.stage === "closed") && (
              <span className="soft">
                {" "}
                · {episode.stage}: {episode.closedWhy ?? episode.onHoldWhy}
              </span>
            )}
          </p>
          <h2 id="decision">{assessment.sentence}</h2>
          {assessment.decision === "must not be released" && (
            <p className={styles.physician}>
              Call a physician for broken or discoloured skin, spreading redness, swelling, a cold limb, fever or loss of feeling.
              Nobody can accept this away.
            </p>
          )}
          <WhatNext seen={seen} today={today} releaseId={released?.id} />
        </div>
        <IndexCard assessment={assessment} />
      </section>
      <section id="series" aria-labelledby="series-head">
        <h2 id="series-head">The series</h2>
        <SocketLine
          compare={
            bundle.sockets.length > 1 ? { href: `/episodes/${episode.id}/side-by-side`, chosen: lastTwo(series) } : undefined
          }
          limb={
            last
              ? [
                  shortDay(dayAt(last.at, timeZone)),
                  `${formatNumber(last.volumeMl, 0)}\u00a0mL ± ${formatNumber(last.standardErrorMl, 0)}`,
                ]
              : []
          }
          sockets={beadsOf({ bundle, sockets: episode.sockets, series, today })}
          gap={
            released
              ? undefined
              : { label: `Specify socket ${episode.sockets.length + 1}`, href: `/episodes/${episode.id}/next-socket` }
          }
          carried={bundle.carried.map((adjustment) => lineAdjustment(adjustment))}
          definitive={
            episode.deliveredAt
              ? [`delivered ${shortDay(dayAt(episode.deliveredAt, timeZone))}`]
              : released
                ? ["released", shortDay(dayAt(released.at, timeZone))]
                : ["after release", "not begun"]
          }
        />
        <p>
          <Link href={`/episodes/${episode.id}/trends`}>Trends over the series</Link>
        </p>
      </section>
      <section aria-labelledby="gates">
        <h2 id="gates">What stands behind it</h2>
        <GateList
          gates={assessment.gates}
          kinds={sourceKinds}
          timeZone={timeZone}
          action={(gate) => (released ? undefined : wayToSettle(gate.id, gate.state, place))}
        />
      </section>
      <div className={styles.two}>
        <section id="limb" aria-labelledby="limb-head">
          <LimbSize bundle={bundle} assessment={assessment} limits={limits} headId="limb-head" />
        </section>
        <section aria-labelledby="marks">
          <Marks bundle={bundle} assessment={assessment} headId="marks" />
        </section>
      </div>
      <Carried
        bundle={bundle}
        assessment={assessment}
        series={series}
        mayCarry={
          may(actor, "carry an adjustment") &&
          episode.signOffs.every(({ withdrawal, socketId }) => withdrawal || socketId !== assessment.subject?.socketId)
        }
      />
      <Signatures episode={episode} released={released !== undefined} timeZone={timeZone} questions={questions} />
      <History episode={episode} timeZone={timeZone} />
      <section>
        <Advice />
      </section>
    </>
  );
}

function aboutLimb({ episode, bundle, prosthetist }: SeenEpisode): React.ReactNode {
  const { device, suspension, birthOn } = bundle.episode;
  const words = [
    birthOn && `born ${birthOn.slice(0, 4)}`,
    episode.wearer.occupation,
    suspension,
    device ? `device ${device.massKg} kg, ${device.centreOfMassMm} mm from the joint` : "device not known yet",
    episode.targetOn && `wanted by ${longDay(episode.targetOn)}`,
    prosthetist,
  ].filter(Boolean);
  return (
    <>
      <Link href={`/wearers/${episode.wearerId}`}>{episode.wearer.clinicNumber}</Link> · {words.join(" · ")}
    </>
  );
}

/** The next step, then the shortest list that would change the decision. */
function WhatNext({
  seen: { episode, assessment, next },
  today,
  releaseId,
}: {
  seen: SeenEpisode;
  today: string;
  releaseId: string | undefined;
}) {
  const place = { episodeId: episode.id, subject: assessment.subject, decision: assessment.decision, releaseId };
  const way = wayOfStep(next.step, place);
  const due = next.dueOn?.slice(0, 10);
  return (
    <ol className={styles.todo}>
      {next.step && (
        <li>
          <span>
            <strong>Next: {next.step}</strong>, {next.who}
            {due && (
              <span className={due < today ? styles.late : "soft"}>
                , {due < today ? dueWords(due, today) : `by ${shortDay(due)}`}
              </span>
            )}
            . <small>{next.why}</small>
          </span>
          {way && (
            <Link className="button" href={way.href}>
              {way.label}
            </Link>
          )}
        </li>
      )}
      {assessment.next.map((action) => {
        const settle = wayToSettle(action.gate, assessment.gates.find(({ id }) => id === action.gate)?.state ?? "unknown", place);
        return (
          <li key={`${action.gate} ${action.action}`}>
            <span>
              {action.action} <small>{action.why}</small>
            </span>
            {settle && settle.href !== way?.href && (
              <Link className="button quiet" href={settle.href}>
                {settle.label}
              </Link>
            )}
          </li>
        );
      })}
    </ol>
  );
}

function IndexCard({ assessment: { index } }: { assessment: Assessment }) {
  const spoils = index.components.filter(({ desirability }) => desirability === 0);
  return (
    <aside className="card" aria-label="How good the fit is">
      <h3>How good the fit is, if all gates hold</h3>
      {index.value === undefined ? (
        <p className="soft">Not known: {index.why}</p>
      ) : (
        <>
          <p className={styles.index}>{formatNumber(index.value, 2)}</p>
          <p className="soft">
            {index.low90 !== undefined &&
              index.high90 !== undefined &&
              `between ${formatNumber(index.low90, 2)} and ${formatNumber(index.high90, 2)}; `}
            it compares sockets and decides nothing
          </p>
          {spoils.length > 0 && (
            <p className="soft">Nothing is left of it because of: {spoils.map(({ name }) => name).join(", ")}.</p>
          )}
        </>
      )}
    </aside>
  );
}
