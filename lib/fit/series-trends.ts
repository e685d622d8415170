/** What a series looks like over time: each socket at the date when it was last worn, and where the limb was another one. */
import type { Bundle } from "./bundle";
import { figure } from "./figures";
import { instantMs } from "./instant";
import { type LimbBetween, lastWornMs, limbBetweenSockets } from "./limb-between-sockets";
import { defaultLimits, type Limits } from "./limits";
import type { Series } from "./series";
import type { MarkGrade } from "./skin-marks-grade";
import type { Measured, SocketFindings } from "./socket-findings";

/** One socket that was worn. Every field that is missing was not measured. */
export interface SocketTrend {
  socketId: string;
  number: number;
  /** When it was last worn. */
  atMs: number;
  /** 0–10. */
  comfortAtFitting?: number;
  /** The last that was said in the trial, 0–10. */
  comfortInTrial?: number;
  /** At the first look after doffing; the harder one, where there was such a look after the fitting and after the trial. */
  hardestMark?: { grade: MarkGrade; after: "fitting" | "trial" };
  displacement?: Measured & { atN: number };
  index?: { value: number; low90?: number; high90?: number };
  /** Of all its trials. */
  stopSigns: number;
}

/** Two sockets, the one that was worn first and the one that was worn after it, with what the limb did meanwhile. */
export interface LimbSpan {
  fromNumber: number;
  toNumber: number;
  fromMs: number;
  toMs: number;
  limb: LimbBetween;
}

export interface SeriesTrends {
  /** In the order in which they were last worn. */
  sockets: SocketTrend[];
  /** Numbers of those that nobody ever wore: they have no place on an axis of dates. */
  neverWorn: number[];
  /** From each to the next one worn, and from each to one that was made from it. */
  spans: LimbSpan[];
  /** From the first one worn to the last; missing where that is one of the spans. */
  whole?: LimbSpan;
}

/**
 * The points of a series over time. Comfort, marks, displacement and index are those of `findingsOfSocket`; a socket
 * stands at the date when it was last worn.
 *
 * @param series of the same bundle, from `seriesOf`
 * @throws FitInputError where an instant is wrong
 * @source plain
 *
 * @example
 * trendsOf(
 *   {
 *     format: "fitting-bundle/1",
 *     asOf: "2026-10-08T09:00:00Z",
 *     clinic: { timeZone: "Europe/Lisbon" },
 *     episode: { id: "e", side: "left", level: "transradial", cause: "trauma", landmark: "distal end", stationsFrom: "distal end", limbLengthMm: 170, suspension: "harness", cautions: [] },
 *     limbMeasurements: [], sockets: [{ id: "s1", number: 1, stations: [], adjustments: [] }], fittings: [], wearTrials: [], carried: [], acceptances: [],
 *   },
 *   { findings: [{ socketId: "s1", number: 1 }], steps: [] },
 * ).neverWorn
 * // => [1]
 */
export function trendsOf(
  bundle: Bundle,
  { findings, steps }: Series,
  { limits = defaultLimits, asOf = bundle.asOf }: { limits?: Limits; asOf?: string } = {},
): SeriesTrends {
  instantMs(asOf, "asOf");
  const worn = findings.map((found) => ({ found, atMs: lastWornMs(bundle, found.socketId, { asOf }) }));
  const sockets = worn
    .flatMap(({ found, atMs }) => (atMs === undefined ? [] : [trendOf(found, atMs)]))
    .sort((a, b) => a.atMs - b.atMs || a.number - b.number);
  const between = (from: SocketTrend, to: SocketTrend): LimbSpan => ({
    fromNumber: from.number,
    toNumber: to.number,
    fromMs: from.atMs,
    toMs: to.atMs,
    limb:
      steps.find(({ fromId, toId }) => fromId === from.socketId && toId === to.socketId)?.limb ??
      limbBetweenSockets(bundle, from.socketId, to.socketId, { limits, asOf }),
  });
  const spans = sockets.flatMap((to, index) => {
    const before = sockets[index - 1];
    return sockets
      .slice(0, index)
      .filter((from) => from === before || steps.some(({ fromId, toId }) => fromId === from.socketId && toId === to.socketId))
      .map((from) => between(from, to));
  });
  const [first, last] = [sockets[0], sockets.at(-1)];
  const isSpan = spans.some(({ fromNumber, toNumber }) => fromNumber === first?.number && toNumber === last?.number);
  return {
    sockets,
    neverWorn: worn.flatMap(({ found, atMs }) => (atMs === undefined ? [found.number] : [])),
    spans,
    ...(first && last && first !== last && !isSpan ? { whole: between(first, last) } : {}),
  };
}

function trendOf(
  { socketId, number, fitting, trial, stoppedBefore = [], displacement, index }: SocketFindings,
  atMs: number,
): SocketTrend {
  const hardestMark = hardestOf(fitting?.skin, trial?.skin);
  return {
    socketId,
    number,
    atMs,
    ...(fitting?.comfort === undefined ? {} : { comfortAtFitting: fitting.comfort }),
    ...(trial?.comfort === undefined ? {} : { comfortInTrial: trial.comfort }),
    ...(hardestMark ? { hardestMark } : {}),
    ...(displacement ? { displacement } : {}),
    ...(index?.value === undefined
      ? {}
      : {
          index: {
            value: index.value,
            ...(index.low90 === undefined ? {} : { low90: index.low90 }),
            ...(index.high90 === undefined ? {} : { high90: index.high90 }),
          },
        }),
    stopSigns: (trial?.stopSigns ?? 0) + stoppedBefore.length,
  };
}

type Looked = { hardestGrade: number } | undefined;

function hardestOf(atFitting: Looked, inTrial: Looked): SocketTrend["hardestMark"] {
  if (!atFitting && !inTrial) return undefined;
  const after = (inTrial?.hardestGrade ?? -1) >= (atFitting?.hardestGrade ?? -1) ? "trial" : "fitting";
  const grade = Math.max(atFitting?.hardestGrade ?? 0, inTrial?.hardestGrade ?? 0);
  return { grade: grade as MarkGrade, after }; // the hardest of grades is one
}

/** Plain sentences about the limb, for the head of a series. */
export interface LimbWords {
  /** Where it changed by more than the tape can miss, or that it never did. Missing where nothing is known at all. */
  found?: string;
  /** Where it did not, if it did elsewhere. */
  unchanged?: string;
  /** Between which sockets nobody knows, each with the reason. */
  unknown: string[];
  /** The change over the whole series, where that is more than the tape can miss. */
  inAll?: string;
}

/**
 * What the limb did while the sockets were worn.
 *
 * @source plain
 *
 * @example
 * limbWords({
 *   spans: [{ fromNumber: 4, toNumber: 5, fromMs: 0, toMs: 1, limb: { state: "changed", percent: -7.14, standardErrorPercent: 1.9, why: "", source: "jarl-2003" } }],
 * }).found
 * // => "Between sockets 4 and 5 the limb changed detectably: −7.1 % ± 1.9 % of its volume. What came of the adjustments there may be the limb’s doing."
 */
export function limbWords({ spans, whole }: Pick<SeriesTrends, "spans" | "whole">): LimbWords {
  const of = (state: LimbBetween["state"]) => spans.filter(({ limb }) => limb.state === state);
  const [changed, unchanged, unknown] = [of("changed"), of("no detectable change"), of("not known")];
  return {
    ...(changed.length > 0
      ? { found: `${changedWords(changed)} What came of the adjustments there may be the limb’s doing.` }
      : unchanged.length > 0
        ? { found: neverWords(unchanged, unknown.length === 0) }
        : {}),
    ...(changed.length > 0 && unchanged.length > 0
      ? { unchanged: `Between sockets ${pairs(unchanged)} it did not change by more than the tape can miss.` }
      : {}),
    unknown: [...new Set(unknown.map(({ limb }) => limb.why))].map((why) => {
      const here = unknown.filter(({ limb }) => limb.why === why);
      return `Between sockets ${pairs(here)} it is not known whether the limb changed. ${why}`;
    }),
    ...(whole?.limb.state === "changed"
      ? { inAll: `From socket ${whole.fromNumber} to socket ${whole.toNumber} it changed in all by ${by(whole)}.` }
      : {}),
  };
}

const by = ({ limb: { percent = 0, standardErrorPercent = 0 } }: LimbSpan): string =>
  `${figure(percent, 1)} % ± ${figure(standardErrorPercent, 1)} % of its volume`;

function changedWords(changed: readonly LimbSpan[]): string {
  const [only, ...more] = changed;
  if (only && more.length === 0)
    return `Between sockets ${only.fromNumber} and ${only.toNumber} the limb changed detectably: ${by(only)}.`;
  return `The limb changed detectably between sockets ${listed(changed.map((span) => `${pair(span)} (${by(span)})`))}.`;
}

const neverWords = (unchanged: readonly LimbSpan[], everywhere: boolean): string =>
  everywhere
    ? "From one socket worn to the next, the limb never changed by more than the tape can miss."
    : `Between sockets ${pairs(unchanged)} the limb did not change by more than the tape can miss.`;

const pair = ({ fromNumber, toNumber }: LimbSpan): string => `${fromNumber} and ${toNumber}`;

const pairs = (spans: readonly LimbSpan[]): string => listed(spans.map(pair));

/** Pairs have an "and" of their own. */
const listed = (parts: readonly string[]): string =>
  parts.length < 2 ? parts.join("") : `${parts.slice(0, -1).join(", ")}, and ${parts.at(-1)}`;
