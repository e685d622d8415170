import type { Metadata } from "next";
import Link from "next/link";
import { show } from "@/app/_forms/show";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { Empty } from "@/app/_parts/empty";
import { LimbMap } from "@/app/_parts/limb-map";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { seeWearing } from "@/lib/records/see-after-release";
import { TickList } from "./tick-list";
import styles from "./wearing.module.css";
import { wearingDays } from "./wearing-days";

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
        <Link href={`/episodes/${episodeId}`} prefetch={false}>
          Back to the episode
        </Link>
        {plan && mayPlan && (
          <Link href={change} prefetch={false}>
            Change the schedule
          </Link>
        )}
        {plan && <span className="soft">Prints on one page of A4 or Letter.</span>}
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
              <strong>Withdrawn.</strong> Do not wear the socket by this page. Ask the clinic.
            </p>
          )}
          <header>
            <h1>Getting used to your new socket</h1>
            <p>
              {wearer.name} · {side} side · {clinic.name}
              {clinic.invented && " · invented data"}
            </p>
          </header>
          <TickList days={wearingDays(plan)} />
          <div className={styles.two}>
            <section>
              <h2>Every time you take it off</h2>
              <ol>
                <li>Look at your skin all round. Use a mirror for the back and the end.</li>
                <li>Look again after 20 minutes.</li>
                <li>
                  <strong>Red marks gone and nothing hurts?</strong> Go on with the list.
                </li>
                <li>
                  <strong>Marks still there, or it hurts a little?</strong> Do the same day again, or go back one.
                </li>
              </ol>
              {plan.words && <p className={styles.words}>{plan.words}</p>}
            </section>
            <section>
              <h2>Draw here where a mark stays</h2>
              <LimbMap title="Your limb, to draw on" {...limbShapeOf(bundle)} marks={[]} withKey={false} plain />
            </section>
          </div>
          <section className={styles.stop}>
            <h2>Take it off, leave it off, and call</h2>
            <ul>
              <li>Skin that is open, blistered or purple.</li>
              <li>Redness that lasts longer than the day before.</li>
              <li>The limb is numb, tingles, turns cold, swells or changes colour.</li>
              <li>Redness that spreads, or a fever: call a doctor the same day.</li>
            </ul>
            <p className={styles.call}>Call: {plan.call}</p>
          </section>
          <p className={styles.small}>
            Planned by {plan.byName}, {dayAndTimeAt(plan.at, clinic.timeZone)}. Your prosthetist may change it. Follow what they
            and the makers of the parts say.
          </p>
        </article>
      )}
    </>
  );
}
