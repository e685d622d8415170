/** The four measures of the sockets and the limb's volume as panels over one axis of dates. */
import { longDay } from "@/app/_parts/dates";
import type { ChartPoint, LineChartProps } from "@/app/_parts/line-chart";
import { formatNumber } from "@/app/_parts/numbers";
import { type Bundle, type Limits, limitValue, type SeriesTrends, type SocketTrend, suspensionRule } from "@/lib/fit";
import { dayNumber, type volumePoints } from "../limb-size";
import { dateTicks } from "./date-ticks";

export interface Panel {
  name: string;
  /** After the name: unit, error, which way is better. */
  about: string;
  /** What the second line is, where there is one. */
  key?: string | undefined;
  chart: LineChartProps;
  /** Said under the panel: with which sockets it was not measured. */
  missing?: string | undefined;
}

interface Asked {
  trends: SeriesTrends;
  bundle: Bundle;
  limits: Limits;
  volume: Pick<ReturnType<typeof volumePoints>, "points" | "zone">;
}

/** 90 % of the normal distribution lies within so many standard errors. */
const error90 = 1.645;
const upWidth = 82;

export const gradeWords = ["0 none", "1 faint", "2 clear", "3 deep", "4 broken"] as const;

export function panelsOf({ trends, bundle, limits, volume }: Asked): { sockets: Panel[]; limb: Panel } {
  const { sockets } = trends;
  const at = [...sockets.map(({ atMs }) => dayNumber(atMs)), ...volume.points.map((point) => point.at)];
  const along = [Math.min(...at), Math.max(...at)] as const;
  const shared = {
    unit: "",
    upWidth,
    ticks: dateTicks(along),
    spans: trends.spans
      .filter(({ limb }) => limb.state === "changed")
      .map(({ fromMs, toMs }) => ({ from: dayNumber(fromMs), to: dayNumber(toMs), label: "limb changed" })),
  };
  const rule = suspensionRule(bundle.episode, limits);
  const least = limitValue(limits, "comfort-last-least");
  const displacement = measured(sockets, ({ displacement: found }) => found && { value: found.value, ...within(found) });
  const mostMm = Math.max(rule.limitMm, ...displacement.points.map(({ value, high }) => high ?? value));
  return {
    sockets: [
      {
        name: "Comfort",
        about: "0 to 10, higher is better",
        key: `round: last said in the wear trial, ${formatNumber(least, 0)} or more asked for; square: said at the fitting`,
        ...comfortOf(sockets, {
          ...shared,
          frame: { along, up: [0, 10] },
          limit: { value: least, label: `${formatNumber(least, 0)} or more`, isInCaption: true },
        }),
      },
      {
        name: "Hardest mark",
        about: "at the first look after doffing, grade 0 to 4, lower is better",
        ...single(
          "Hardest mark",
          measured(sockets, ({ hardestMark }) => hardestMark && { value: hardestMark.grade }),
          {
            ...shared,
            upWords: gradeWords,
            frame: { along, up: [0, 4] },
          },
        ),
      },
      {
        name: "Displacement under load",
        about: `mm at ${formatNumber(rule.loadN, 0)} N (at most ${formatNumber(rule.limitMm, 0)} asked for), with its 90 % interval, lower is better`,
        ...single("Displacement", displacement, {
          ...shared,
          unit: "mm",
          interval: "bars",
          limit: { value: rule.limitMm, label: `at most ${formatNumber(rule.limitMm, 0)} mm`, isInCaption: true },
          frame: { along, up: [0, roundUp(mostMm)] },
        }),
      },
      {
        name: "Readiness index",
        about: "0 to 1, with its 90 % interval, higher is better. It compares sockets and decides nothing",
        ...single(
          "Readiness index",
          measured(sockets, ({ index }) => index && { value: index.value, low: index.low90, high: index.high90 }),
          { ...shared, interval: "bars", frame: { along, up: [0, 1] } },
        ),
      },
    ],
    limb: {
      name: "The limb’s volume",
      about: "mL between the same levels, with its 90 % error band; neither way is better",
      chart: {
        ...shared,
        unit: "mL",
        frame: { along },
        points: volume.points,
        zone: volume.zone,
        summary: limbSummary(volume.points),
      },
      missing: volume.points.length === 0 ? "The limb was not measured." : undefined,
    },
  };
}

type Shared = Omit<LineChartProps, "points" | "summary">;
type Found = Pick<ChartPoint, "value" | "low" | "high">;
interface Line {
  points: ChartPoint[];
  /** Where a socket was worn and this was not measured. */
  gaps: number[];
  numbersOfGaps: number[];
}

function measured(sockets: readonly SocketTrend[], find: (socket: SocketTrend) => Found | undefined): Line {
  const line: Line = { points: [], gaps: [], numbersOfGaps: [] };
  for (const socket of sockets) {
    const at = dayNumber(socket.atMs);
    const found = find(socket);
    if (found) line.points.push({ at, label: `socket ${socket.number}`, name: String(socket.number), ...found });
    else {
      line.gaps.push(at);
      line.numbersOfGaps.push(socket.number);
    }
  }
  return line;
}

const within = ({ value, standardError }: { value: number; standardError?: number }): Pick<Found, "low" | "high"> =>
  standardError === undefined ? {} : { low: Math.max(0, value - error90 * standardError), high: value + error90 * standardError };

function single(name: string, { points, gaps, numbersOfGaps }: Line, shared: Shared): Pick<Panel, "chart" | "missing"> {
  return {
    chart: { ...shared, points, gaps, summary: summaryOf(name, points) },
    missing: numbersOfGaps.length === 0 ? undefined : `Not measured with ${socketWords(numbersOfGaps)}.`,
  };
}

/** Each socket's number stands at the higher of its two points. */
function comfortOf(sockets: readonly SocketTrend[], shared: Shared): Pick<Panel, "chart" | "missing"> {
  const numbered = (line: Line, isHere: (socket: SocketTrend) => boolean): ChartPoint[] => {
    const here = sockets.filter(isHere).map(({ number }) => String(number));
    return line.points.map(({ name, ...point }) => (name !== undefined && here.includes(name) ? { ...point, name } : point));
  };
  const inTrial = measured(sockets, ({ comfortInTrial }) =>
    comfortInTrial === undefined ? undefined : { value: comfortInTrial },
  );
  const atFitting = measured(sockets, ({ comfortAtFitting }) =>
    comfortAtFitting === undefined ? undefined : { value: comfortAtFitting },
  );
  const isTrialHigher = ({ comfortInTrial = -1, comfortAtFitting = -1 }: SocketTrend) => comfortInTrial >= comfortAtFitting;
  const missing = [
    ["in a wear trial", inTrial.numbersOfGaps],
    ["at a fitting", atFitting.numbersOfGaps],
  ] as const;
  return {
    chart: {
      ...shared,
      points: numbered(inTrial, isTrialHigher),
      gaps: inTrial.gaps,
      beside: { points: numbered(atFitting, (socket) => !isTrialHigher(socket)), gaps: atFitting.gaps },
      summary: `${summaryOf("Comfort in the wear trial", inTrial.points)} ${summaryOf("Comfort at the fitting", atFitting.points)}`,
    },
    missing:
      missing
        .filter(([, numbers]) => numbers.length > 0)
        .map(([where, numbers]) => `Not asked ${where} of ${socketWords(numbers)}.`)
        .join(" ") || undefined,
  };
}

/** "Comfort at the fitting: socket 1 5, socket 2 6." */
const summaryOf = (name: string, points: readonly ChartPoint[]): string =>
  points.length === 0
    ? `${name}: not measured.`
    : `${name}: ${points.map(({ label, value }) => `${label} ${formatNumber(value, Number.isInteger(value) ? 0 : 2)}`).join(", ")}.`;

function limbSummary(points: readonly (ChartPoint & { day: string })[]): string {
  const [first, last] = [points[0], points.at(-1)];
  if (!first || !last) return "The limb’s volume: not measured.";
  return `The limb’s volume from ${formatNumber(first.value, 0)} mL on ${longDay(first.day)} to ${formatNumber(last.value, 0)} mL on ${longDay(last.day)}.`;
}

/** @example socketWords([1, 2, 5]) // => "sockets 1, 2 and 5" */
export function socketWords(numbers: readonly number[]): string {
  if (numbers.length === 1) return `socket ${numbers[0]}`;
  return `sockets ${numbers.slice(0, -1).join(", ")} and ${numbers.at(-1)}`;
}

/** The end of an axis from 0 on that leaves round numbers beneath it. */
function roundUp(most: number): number {
  const step = 10 ** Math.floor(Math.log10(most)) / 2;
  return Math.ceil(most / step) * step;
}
