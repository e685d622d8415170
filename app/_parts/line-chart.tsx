"use client";

import {
  Chart,
  type ChartData,
  type ChartOptions,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  PointElement,
} from "chart.js";
import { Line } from "react-chartjs-2";
import { coloured, fontOf } from "./chart-colours";
import styles from "./line-chart.module.css";
import { drawnAbove, drawnBehind } from "./line-chart-drawing";
import type { ChartPoint, Drawn, LineChartProps } from "./line-chart-props";
import { formatNumber } from "./numbers";
import { useRedrawnChart } from "./use-redrawn-chart";

export type { ChartPoint, LineChartProps };

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

/** A line with its points and 90 % band. Colours are the page's own, in light, in dark and on paper; nothing moves. */
export function LineChart({ summary, ...drawn }: LineChartProps) {
  const chart = useRedrawnChart<"line", { x: number; y: number }[]>();

  return (
    <div className={styles.chart}>
      <Line
        ref={chart}
        data={datasetsOf(drawn)}
        options={optionsOf(drawn)}
        plugins={[drawnBehind(drawn), drawnAbove(drawn)]}
        aria-label={summary}
      />
    </div>
  );
}

/** In the order of the axis; where nothing was measured stands a point that is none. */
const broken = (points: readonly { at: number; y: number }[], gaps: readonly number[] = []): { x: number; y: number }[] =>
  [...points.map(({ at, y }) => ({ x: at, y })), ...gaps.map((at) => ({ x: at, y: Number.NaN }))].sort((a, b) => a.x - b.x);

function datasetsOf({ points, gaps, beside, interval = "band" }: Drawn): ChartData<"line", { x: number; y: number }[]> {
  const edge = (of: "low" | "high") =>
    broken(
      points.flatMap((point) => (point[of] === undefined ? [] : [{ at: point.at, y: point[of] }])),
      gaps,
    );
  const unseen = { borderWidth: 0, pointRadius: 0 };
  const line = {
    borderColor: coloured("--accent"),
    borderWidth: 2.2,
    // A point at the end of the scale is drawn whole.
    clip: false as const,
    pointRadius: 4.5,
    pointBorderWidth: 2,
    pointBackgroundColor: coloured("--card"),
    pointBorderColor: coloured("--accent"),
  };
  const values = (of: readonly ChartPoint[]) => of.map(({ at, value }) => ({ at, y: value }));
  return {
    datasets: [
      { ...line, data: broken(values(points), gaps) },
      ...(interval === "band"
        ? [
            { ...unseen, data: edge("low") },
            { ...unseen, data: edge("high"), fill: "-1", backgroundColor: coloured("--accent", 0.14) },
          ]
        : []),
      ...(beside
        ? [
            {
              ...line,
              data: broken(values(beside.points), beside.gaps),
              borderDash: [5, 4],
              pointStyle: "rect" as const,
              // Seen around a round point of the same value.
              pointRadius: 8.5,
              pointBorderWidth: 1.6,
              borderColor: coloured("--soft"),
              pointBorderColor: coloured("--soft"),
            },
          ]
        : []),
    ],
  };
}

function optionsOf(drawn: Drawn): ChartOptions<"line"> {
  const { points, unit, frame, beside, upWords, upWidth } = drawn;
  const heights = [...points, ...(beside?.points ?? [])]
    .flatMap(({ value, low, high }) => [value, low ?? value, high ?? value])
    .concat(drawn.limit ? [drawn.limit.value] : []);
  const writing = { color: coloured("--soft"), font: ({ chart }: { chart: Chart }) => ({ size: 15, family: fontOf(chart) }) };
  const ticks = drawn.ticks ?? points;
  const [first, last] = frame?.along ?? [points[0]?.at ?? 0, points.at(-1)?.at ?? 1];
  const margin = (last - first || 1) * 0.03;
  return {
    animation: false,
    responsive: true,
    maintainAspectRatio: false,
    events: [],
    // A name may stand above a point at the top.
    layout: {
      // Points of one chart take no more room than those of another above it.
      ...(upWidth === undefined ? {} : { autoPadding: false }),
      padding: { top: points.some(({ name }) => name !== undefined) ? 24 : 6, right: 4 },
    },
    scales: {
      x: {
        type: "linear",
        min: first - margin,
        max: last + margin,
        grid: drawn.ticks ? { color: coloured("--line"), drawTicks: false } : { display: false },
        border: { display: false },
        afterBuildTicks: (axis) => {
          axis.ticks = ticks.map(({ at }) => ({ value: at }));
        },
        ticks: {
          ...writing,
          autoSkip: true,
          autoSkipPadding: 14,
          maxRotation: 0,
          callback: (value) => ticks.find(({ at }) => at === value)?.label ?? "",
        },
      },
      y: {
        type: "linear",
        ...(frame?.up
          ? { min: frame.up[0], max: frame.up[1] }
          : { suggestedMin: Math.min(...heights), suggestedMax: Math.max(...heights) }),
        border: { display: false },
        grid: { color: coloured("--line") },
        ...(upWidth === undefined
          ? {}
          : {
              afterFit: (axis: { width: number }) => {
                axis.width = upWidth;
              },
            }),
        ticks: {
          ...writing,
          maxTicksLimit: 6,
          ...(upWords ? { stepSize: 1 } : {}),
          callback: (value, index, all) =>
            upWords
              ? (upWords[Number(value)] ?? "")
              : label(Number(value), { unit: index === all.length - 1 ? unit : "", digits: digitsOf(all) }),
        },
      },
    },
  };
}

/** As many as the finest of them needs: 0.2 and 0.25 have two. */
const digitsOf = (ticks: readonly { value: number }[]): number =>
  [0, 1].find((digits) => ticks.every(({ value }) => Math.abs(value - Number(value.toFixed(digits))) < 1e-9)) ?? 2;

/** The unit stands once, at the top of the axis. */
const label = (value: number, { unit, digits }: { unit: string; digits: number }): string =>
  [formatNumber(value, digits), unit].filter(Boolean).join(" ");
