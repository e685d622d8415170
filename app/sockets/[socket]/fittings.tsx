import { dayAndTimeAt } from "@/app/_parts/dates";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { SkinOverTime } from "@/app/_parts/skin-over-time";
import type { Actor } from "@/lib/access/actor";
import type { SeenEpisode } from "@/lib/records/see-episode";
import { FittingLinks } from "./fitting-links";
import styles from "./socket.module.css";

/** The fittings of this socket, and what the skin showed after each. Clinical: only for whom wearers are seen by. */
export function SocketFittings({
  actor,
  socketId,
  seen: { episode, bundle },
}: {
  actor: Actor;
  socketId: string;
  seen: SeenEpisode;
}) {
  const socket = episode.sockets.find(({ id }) => id === socketId);
  const fittings = bundle.fittings.filter((fitting) => fitting.socketId === socketId);
  if (fittings.length === 0) return null;
  return (
    <section id="skin" aria-labelledby="fittings">
      <h2 id="fittings">Fittings, and the skin after each</h2>
      {fittings.map((fitting) => {
        const when = `of ${dayAndTimeAt(fitting.at, bundle.clinic.timeZone)}`;
        return (
          <article key={fitting.id} aria-label={`Fitting ${when}`} className={styles.fitting}>
            <h3>Fitting {when}</h3>
            <p className={`${styles.links} not-on-paper`}>
              <FittingLinks fitting={fitting} when={when} actor={actor} episode={episode} />
            </p>
            {fitting.inspections.length === 0 ? (
              <p className="soft">The skin was not looked at.</p>
            ) : (
              <SkinOverTime
                inspections={fitting.inspections}
                limb={limbShapeOf(bundle, socket)}
                timeZone={bundle.clinic.timeZone}
                headingLevel={4}
              />
            )}
          </article>
        );
      })}
    </section>
  );
}
