import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { Empty } from "@/app/_parts/empty";
import { LimbMap } from "@/app/_parts/limb-map";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { Link } from "@/app/_parts/link";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { seeWearing } from "@/lib/records/see-after-release";
import { TickList } from "./tick-list";
import styles from "./wearing.module.css";
import { wearingDays } from "./wearing-days";
import { wearingWords } from "./wearing-words";

export const metadata: Metadata = { title: "Wear schedule" };

/** One page for the wearer's kitchen table: when, how long, what to look at, when to stop and whom to call. */
export default async function WearingPage({ params }: { params: Promise<{ release: string }> }) {
  const { release } = await params;
  const actor = await requireActor(`/releases/${release}/wearing`);
  const { signOff, clinic, bundle, plan } = await show(seeWearing(actor, release));
  const { wearer, side, id: episodeId } = signOff.episode;
  const change = `/releases/${signOff.id}/wearing/change`;
  const mayPlan = may(actor, "plan wearing") && !signOff.withdrawal;
  return (
    <>
      <nav aria-label="This sheet" className={styles.tools}>
        <Link href={`/episodes/${episodeId}`}>Back to the episode</Link>
        {plan && mayPlan && <Link href={change}>Change the schedule</Link>}
        {plan && (
          <span>
            PDF: <a href={`/releases/${signOff.id}/wearing/schedule.pdf`}>A4</a> ·{" "}
            <a href={`/releases/${signOff.id}/wearing/schedule.pdf?paper=letter`}>Letter</a>
          </span>
        )}
      </nav>
      {!plan ? (
        <>
          <h1>Wear schedule</h1>
          <Empty title="Not planned yet" {...(mayPlan ? { first: { href: change, label: "Plan the wearing" } } : {})}>
            A prosthetist plans how this wearer builds up wearing time.
          </Empty>
        </>
      ) : (
        <article className={styles.sheet}>
          {signOff.withdrawal && (
            <p role="note" className={styles.withdrawn}>
              <strong>{wearingWords.withdrawn.lead}</strong> {wearingWords.withdrawn.words}
            </p>
          )}
          <header>
            <h1>{wearingWords.title}</h1>
            <p>
              {wearer.name} · {side} side · {clinic.name}
              {clinic.invented && " · invented data"}
            </p>
          </header>
          <TickList days={wearingDays(plan)} />
          <div className={styles.two}>
            <section>
              <h2>{wearingWords.everyTime}</h2>
              <ol>
                {wearingWords.steps.map(({ lead, words }) => (
                  <li key={words}>
                    {lead && <strong>{lead}</strong>} {words}
                  </li>
                ))}
              </ol>
              {plan.words && <p className={styles.words}>{plan.words}</p>}
            </section>
            <section>
              <h2>{wearingWords.draw}</h2>
              <LimbMap title="Your limb, to draw on" {...limbShapeOf(bundle)} marks={[]} withKey={false} plain />
            </section>
          </div>
          <section className={styles.stop}>
            <h2>{wearingWords.stop}</h2>
            <ul>
              {wearingWords.stops.map((words) => (
                <li key={words}>{words}</li>
              ))}
            </ul>
            <p className={styles.call}>Call: {plan.call}</p>
          </section>
          <p className={styles.small}>
            Planned by {plan.byName}, {dayAndTimeAt(plan.at, clinic.timeZone)}. {wearingWords.follow}
          </p>
        </article>
      )}
    </>
  );
}
