import { show } from "@/app/_forms/show";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { SkinOverTime } from "@/app/_parts/skin-over-time";
import type { Actor } from "@/lib/access/actor";
import { seeEpisodeOfSocket } from "@/lib/records/see-episode";

/** What the skin showed after each fitting of this socket. Clinical: only for whom wearers are seen by. */
export async function SocketSkin({ actor, socketId }: { actor: Actor; socketId: string }) {
  const { episode, bundle } = await show(seeEpisodeOfSocket(actor, socketId));
  const socket = episode.sockets.find(({ id }) => id === socketId);
  const fittings = bundle.fittings.filter((fitting) => fitting.socketId === socketId && fitting.inspections.length > 0);
  if (fittings.length === 0) return null;
  return (
    <section id="skin" aria-labelledby="looks">
      <h2 id="looks">The skin after each fitting</h2>
      {fittings.map((fitting) => (
        <article key={fitting.id} aria-label={`Skin after the fitting of ${dayAndTimeAt(fitting.at, bundle.clinic.timeZone)}`}>
          <h3>Fitting of {dayAndTimeAt(fitting.at, bundle.clinic.timeZone)}</h3>
          <SkinOverTime
            inspections={fitting.inspections}
            limb={limbShapeOf(bundle, socket)}
            timeZone={bundle.clinic.timeZone}
            headingLevel={4}
          />
        </article>
      ))}
    </section>
  );
}
