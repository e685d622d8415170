import { adjustmentWords } from "@/app/_parts/adjustment-words";
import { EffectWords, SideEffects } from "@/app/_parts/effect-words";
import { Link } from "@/app/_parts/link";
import { effectOf, isTried } from "@/app/episodes/[episode]/series";
import { AdjustmentHistory } from "@/app/episodes/adjustment-history";
import type { Actor } from "@/lib/access/actor";
import { type Series, seriesOf } from "@/lib/fit";
import type { SeenEpisode } from "@/lib/records/see-episode";
import type { SocketOrder } from "@/lib/records/see-workshop";
import styles from "./socket.module.css";

interface SocketAdjustmentsProps {
  actor: Actor;
  socket: SocketOrder;
  /** Missing for whom wearers are not seen by: the bench reads what was changed and why, not what came of it. */
  seen: SeenEpisode | undefined;
}

/** What separates this socket from the one that it was made from, and what came of it. */
export function SocketAdjustments({ actor, socket, seen }: SocketAdjustmentsProps) {
  const { adjustments, derivedFrom } = socket;
  const series = seen && seriesOf(seen.bundle, { limits: seen.limits });
  return (
    <section aria-labelledby="adjustments">
      <h2 id="adjustments">{derivedFrom ? `What separates it from socket ${derivedFrom.number}` : "Adjustments"}</h2>
      {adjustments.length === 0 ? (
        <p className="soft">None is recorded.</p>
      ) : (
        <ol className={styles.adjustments}>
          {adjustments.map((adjustment) => {
            const effect = series && effectOf(series, adjustment.id);
            return (
              <li key={adjustment.id}>
                <strong>{adjustmentWords(adjustment)}</strong> {adjustment.reason && <small>for: {adjustment.reason}</small>}
                {effect && <EffectWords effect={effect} />}
              </li>
            );
          })}
        </ol>
      )}
      {series && <WhatElse socket={socket} series={series} />}
      {seen && adjustments.length > 0 && (
        <AdjustmentHistory actor={actor} episodeId={socket.episodeId} kinds={adjustments.map(({ kind }) => kind)} />
      )}
    </section>
  );
}

/** What came elsewhere, whether the limb was another one, and the way to the whole comparison. */
function WhatElse({ socket: { id, episodeId, adjustments }, series }: { socket: SocketOrder; series: Series }) {
  const step = series.steps.find(({ toId }) => toId === id);
  if (!step || !isTried(series, id)) return null;
  const wordsOf = (adjustmentId: string) => adjustmentWords(adjustments.find((one) => one.id === adjustmentId) ?? {});
  return (
    <>
      <SideEffects of={step.sideEffects} wordsOf={wordsOf} />
      <p className="soft">{step.limb.why}</p>
      <p className="not-on-paper">
        <Link href={`/episodes/${episodeId}/side-by-side?socket=${step.fromId}&socket=${id}`}>
          Sockets {step.fromNumber} and {step.toNumber} side by side
        </Link>
      </p>
    </>
  );
}
