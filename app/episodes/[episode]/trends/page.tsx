import type { Metadata } from "next";
import type { ReactNode } from "react";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { Empty } from "@/app/_parts/empty";
import { LineChart } from "@/app/_parts/line-chart";
import { Link } from "@/app/_parts/link";
import { counted } from "@/app/_parts/numbers";
import { PageHead } from "@/app/_parts/page-head";
import { requireActor } from "@/lib/access/session";
import { type Bundle, type LimbWords, limbWords, type SeriesTrends } from "@/lib/fit";
import { seeTrends } from "@/lib/records/see-episode";
import { volumePoints } from "../limb-size";
import { type Panel, panelsOf, socketWords } from "./panels";
import { LimbTable, SocketTable } from "./tables";
import styles from "./trends.module.css";

export const metadata: Metadata = { title: "Trends over the series" };

export default async function TrendsPage({ params }: { params: Promise<{ episode: string }> }) {
  const { episode: episodeId } = await params;
  const actor = await requireActor(`/episodes/${episodeId}/trends`);
  const { episode, bundle, assessment, limits, trends } = await show(seeTrends(actor, episodeId));
  const volume = volumePoints(bundle, { limits, assessment });
  return (
    <>
      <PageHead
        title="Trends over the series"
        about={
          <>
            <Link href={`/episodes/${episode.id}`}>
              {episode.wearer.name}, {episode.side} {episode.level}
            </Link>{" "}
            · {counted(bundle.sockets.length, "socket")}
          </>
        }
      />
      {trends.sockets.length === 0 ? (
        <NothingWorn bundle={bundle} />
      ) : (
        <>
          <Head trends={trends} words={limbWords(trends)} />
          <Panels trends={trends} bundle={bundle} limits={limits} volume={volume} />
          <SocketTable trends={trends} timeZone={bundle.clinic.timeZone} />
        </>
      )}
      <section className={styles.advice}>
        <Advice />
      </section>
    </>
  );
}

function Panels(asked: Parameters<typeof panelsOf>[0]) {
  const { sockets, limb } = panelsOf(asked);
  const { trends, volume } = asked;
  return (
    <section className={styles.panels} aria-label="Measures over time">
      {trends.spans.some(({ limb }) => limb.state === "changed") && (
        <p className={`soft ${styles.key}`}>Shaded: between two sockets where the limb changed detectably.</p>
      )}
      {sockets.map((panel) => (
        <PanelFigure key={panel.name} panel={panel} />
      ))}
      <PanelFigure panel={limb}>
        {volume.points.length > 0 && <LimbTable volumes={volume.points} zone={volume.zone} />}
      </PanelFigure>
    </section>
  );
}

function PanelFigure({ panel: { name, about, key, chart, missing }, children }: { panel: Panel; children?: ReactNode }) {
  return (
    <figure className={children ? `${styles.panel} ${styles.withTable}` : styles.panel}>
      <figcaption>
        <strong>{name}</strong>, {about}
        {key && <span className="soft"> · {key}</span>}
      </figcaption>
      {chart.points.length + (chart.beside?.points.length ?? 0) > 0 && <LineChart {...chart} />}
      {missing && <p className="soft">{missing}</p>}
      {children}
    </figure>
  );
}

/** What the limb did meanwhile, and what else the lines do not show. */
function Head({
  trends: { sockets, neverWorn },
  words: { found, unchanged, unknown, inAll },
}: {
  trends: SeriesTrends;
  words: LimbWords;
}) {
  const only = sockets.length === 1 ? sockets[0] : undefined;
  const stopped = sockets.filter(({ stopSigns }) => stopSigns > 0).map(({ number }) => number);
  return (
    <section aria-labelledby="limb-did" className={styles.head}>
      <h2 id="limb-did">{only ? "One socket so far" : "What the limb did meanwhile"}</h2>
      {only && (
        <p>
          Only socket {only.number} was worn. A trend needs two: the points of the next one will stand beside it, with what the
          limb did between them.
        </p>
      )}
      {found && (
        <p>
          <strong>{found}</strong>
        </p>
      )}
      {inAll && <p>{inAll}</p>}
      {unchanged && <p>{unchanged}</p>}
      {unknown.map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {stopped.length > 0 && <p className={styles.stopped}>There was a stop sign in the wear trial of {socketWords(stopped)}.</p>}
      {neverWorn.length > 0 && (
        <p>
          {socketWords(neverWorn).replace(/^s/, "S")} {neverWorn.length === 1 ? "was" : "were"} never worn and{" "}
          {neverWorn.length === 1 ? "has" : "have"} no point.
        </p>
      )}
    </section>
  );
}

function NothingWorn({ bundle: { episode, sockets } }: { bundle: Bundle }) {
  const latest = sockets.at(-1);
  const goesHere =
    "Comfort, the hardest mark, displacement under load and the readiness index of each socket will stand here by date, with the limb’s volume beneath them.";
  return latest ? (
    <Empty title="No socket was worn yet" first={{ href: `/sockets/${latest.id}`, label: `Open socket ${latest.number}` }}>
      {goesHere} They come from fittings and wear trials.
    </Empty>
  ) : (
    <Empty title="No check socket yet" first={{ href: `/episodes/${episode.id}/next-socket`, label: "Specify socket 1" }}>
      {goesHere}
    </Empty>
  );
}
