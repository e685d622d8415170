import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { requireActor } from "@/lib/access/session";
import { seeSideBySide } from "@/lib/records/see-side-by-side";
import { type AddressParts, asked, queryOf } from "./address";
import { Changes } from "./changes";
import { Choose } from "./choose";
import { comparisonOf, type SocketColumn } from "./comparison";
import { Dimensions } from "./dimensions";
import { IndexRow } from "./index-row";
import { Maps } from "./maps";
import { Measures } from "./measures";
import styles from "./side-by-side.module.css";

export const metadata: Metadata = { title: "Side by side" };

interface Props {
  params: Promise<{ episode: string }>;
  searchParams: Promise<AddressParts>;
}

/** Two to four sockets beside each other: what was changed, what came of it, and what was found with each. */
export default async function SideBySidePage({ params, searchParams }: Props) {
  const [{ episode: episodeId }, parts] = await Promise.all([params, searchParams]);
  const { socketIds, against } = asked(parts);
  const actor = await requireActor(`/episodes/${episodeId}/side-by-side?${queryOf({ socketIds, against })}`);
  const seen = await show(seeSideBySide(actor, { episodeId, socketIds }));
  const { episode } = seen;
  const comparison = comparisonOf(seen, against);
  const address = `/episodes/${episodeId}/side-by-side`;
  return (
    <div className={`${styles.page} ${(comparison?.columns.length ?? 0) > 2 ? styles.many : ""}`}>
      <PageHead
        title={comparison ? titleOf(comparison.sockets) : "Sockets side by side"}
        about={`${episode.wearer.name}, ${episode.side} ${episode.level}`}
      >
        <Link className="button quiet" href={`/episodes/${episodeId}#series`}>
          The episode
        </Link>
        {comparison && (
          <a className="button quiet" href={`${address}/csv?${queryOf({ socketIds, against })}`} download>
            Download as CSV
          </a>
        )}
      </PageHead>
      <Choose seen={seen} against={against} address={address} open={!comparison} />
      {comparison && (
        <>
          {comparison.notes.length > 0 && (
            <ul className={styles.notes} aria-label="Read this first">
              {comparison.notes.map((note) => (
                <li key={note}>{note}</li>
              ))}
            </ul>
          )}
          <Changes comparison={comparison} />
          <Measures comparison={comparison} timeZone={seen.bundle.clinic.timeZone} />
          <Maps comparison={comparison} bundle={seen.bundle} />
          <Dimensions comparison={comparison} bundle={seen.bundle} />
          <IndexRow comparison={comparison} />
        </>
      )}
      <Advice />
    </div>
  );
}

/** "Sockets 2 and 3, side by side" */
function titleOf(sockets: readonly SocketColumn[]): string {
  const names = sockets.map(({ own, number, name }) => (own ? String(number) : name.replace("Socket ", "")));
  return `Sockets ${names.slice(0, -1).join(", ")} and ${names.at(-1)}, side by side`;
}
