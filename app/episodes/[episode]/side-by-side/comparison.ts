/** What the page and the file of a comparison both say: the chosen sockets, held against each other. */
import {
  type Against,
  type BetweenSockets,
  type Bundle,
  betweenSockets,
  compareSeveral,
  type DimensionsBeside,
  dimensionsBeside,
  fewestSockets,
  type HowTried,
  howTried,
  type LimbBetween,
  lastWornMs,
  limbBetweenSockets,
  type MarkedPlace,
  mostSockets,
  type Occasion,
  placesOverSockets,
  type Series,
  type SocketsCompared,
  seriesOf,
  skinOccasion,
  triedOtherwise,
} from "@/lib/fit";
import { inWords } from "@/lib/fit/figures";
import type { SeenEpisode } from "@/lib/records/see-episode";
import type { SeenSideBySide } from "@/lib/records/see-side-by-side";

export interface SocketColumn {
  socketId: string;
  /** "Socket 2", or "Socket 1, right transtibial" where it is of another episode. */
  name: string;
  number: number;
  own: boolean;
  seen: SeenEpisode;
  tried: HowTried;
  /** When it was last worn. */
  wornAt?: string;
}

/** Two of the chosen sockets that follow each other. */
export interface ColumnStep {
  from: SocketColumn;
  to: SocketColumn;
  between: BetweenSockets;
  limb: LimbBetween;
}

export interface Comparison extends SocketsCompared {
  against: Against;
  sockets: SocketColumn[];
  series: Series;
  steps: ColumnStep[];
  occasion: Occasion;
  /** Of this episode's columns, in their order. */
  places: MarkedPlace[];
  dimensions: DimensionsBeside;
  /** What cannot be compared, or not without care, and why. */
  notes: string[];
}

/** Undefined where fewer than two or more than four sockets are chosen. */
export function comparisonOf(seen: SeenSideBySide, against: Against): Comparison | undefined {
  const { chosen, limits, bundle } = seen;
  if (chosen.length < fewestSockets || chosen.length > mostSockets) return undefined;
  const compared = compareSeveral(
    chosen.map((one) => ({ bundle: one.seen.bundle, socketId: one.socketId })),
    { against, limits },
  );
  const sockets = compared.columns.map(({ findings }): SocketColumn => {
    const one = chosen.find(({ socketId }) => socketId === findings.socketId);
    const of = one?.seen ?? seen;
    const worn = lastWornMs(of.bundle, findings.socketId);
    const own = of.episode.id === seen.episode.id;
    return {
      socketId: findings.socketId,
      name: own ? `Socket ${findings.number}` : `Socket ${findings.number}, ${of.episode.side} ${of.episode.level}`,
      number: findings.number,
      own,
      seen: of,
      tried: howTried(of.bundle, findings.socketId, { limits }),
      ...(worn === undefined ? {} : { wornAt: new Date(worn).toISOString() }),
    };
  });
  const own = sockets.filter((socket) => socket.own);
  const series = seriesOf(bundle, { limits });
  const steps = own.slice(1).flatMap((to, index): ColumnStep[] => {
    const from = own[index];
    if (!from) return [];
    return [
      {
        from,
        to,
        between: betweenSockets(series, from.socketId, to.socketId),
        limb: limbBetweenSockets(bundle, from.socketId, to.socketId, { limits }),
      },
    ];
  });
  const occasion = skinOccasion(compared.columns);
  const ownFindings = compared.columns.flatMap(({ findings, episodeId }) => (episodeId === bundle.episode.id ? [findings] : []));
  return {
    ...compared,
    against,
    sockets,
    series,
    steps,
    occasion,
    places: placesOverSockets(
      bundle,
      ownFindings.map((findings) => findings[occasion]?.skin),
    ),
    dimensions: dimensionsBeside(
      bundle,
      own.map(({ socketId }) => socketId),
      { limits },
    ),
    notes: notesOn(bundle, sockets, compared.columns),
  };
}

function notesOn({ episode }: Bundle, sockets: readonly SocketColumn[], columns: SocketsCompared["columns"]): string[] {
  const alike = triedOtherwise(sockets.filter(({ own }) => own).map(({ tried }) => tried));
  return [
    ...sockets.flatMap(({ own, number, seen }): string[] => {
      if (own) return [];
      const { side, level } = seen.episode;
      const isOtherLimb = side !== episode.side || level !== episode.level;
      const why = isOtherLimb
        ? `is of another limb, the ${side} ${level} one`
        : `is of another episode, of the same ${level} limb`;
      return [`Socket ${number} ${why}: its values are shown, and nothing is compared with them.`];
    }),
    ...sockets
      .filter(({ tried }) => !tried.fitting && !tried.trial)
      .map(({ name }) => `${name} was never fitted: there is nothing of it to compare but its dimensions.`),
    ...columns.flatMap(({ findings: { stoppedBefore = [] } }, column) =>
      stoppedBefore.length === 0
        ? []
        : [
            `${sockets[column]?.name} had a stop sign in another trial than its latest: ${stoppedBefore.map(inWords).join(", ")}.`,
          ],
    ),
    ...(alike ? [alike] : []),
  ];
}
