import { Link } from "@/app/_parts/link";
import type { Actor } from "@/lib/access/actor";
import { may } from "@/lib/access/roles";
import type { EpisodeWhole } from "@/lib/records/bundle-of";

interface FittingLinksProps {
  fitting: { id: string; socketId: string };
  /** "of 5 Oct 2026, 10:30": heard with every link, where a page has several fittings. */
  when: string;
  actor: Actor;
  episode: Pick<EpisodeWhole, "signOffs">;
}

/** From a page of the socket to a fitting of it: read it, look at the skin again, put it right. Under a signature only read. */
export function FittingLinks({ fitting, when, actor, episode }: FittingLinksProps) {
  const isSigned = episode.signOffs.some(({ socketId, withdrawal }) => socketId === fitting.socketId && withdrawal === null);
  const heard = <span className="heard">, fitting {when}</span>;
  return (
    <>
      <Link className="button quiet" href={`/fittings/${fitting.id}`}>
        Read the fitting<span className="heard"> {when}</span>
      </Link>
      {!isSigned && may(actor, "look at the skin") && (
        <Link className="button quiet" href={`/fittings/${fitting.id}/look`}>
          Look at the skin again{heard}
        </Link>
      )}
      {!isSigned && may(actor, "record a fitting") && (
        <Link className="button quiet" href={`/fittings/${fitting.id}/correct`}>
          Put it right{heard}
        </Link>
      )}
    </>
  );
}
