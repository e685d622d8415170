"use client";

import {
  Chart,
  type ChartData,
  type ChartOptions,
  Filler,
  LinearScale,
  LineController,
  LineElement,
  type Plugin,
  PointElement,
} from "chart.js";
import { useEffect, useRef } from "react";
import { Line } from "react-chartjs-2";
import { coloured, fontOf, tokenColour } from "./chart-colours";
import styles from "./line-chart.module.css";
import { formatNumber } from "./numbers";

Chart.register(LineController, LineElement, PointElement, LinearScale, Filler);

export interface ChartPoint {
  /** Where it stands on the horizontal axis: a number of days, of minutes. */
  at: number;
  /** What is written there: "14 Sep". */
  label: string;
  value: number;
  /** Ends of the 90 % interval; left out where the error is not known. */
  low?: number | undefined;
  high?: number | undefined;
}

export interface LineChartProps {
  points: readonly ChartPoint[];
  unit: string;
  /** The picture in one sentence, for those who hear it. */
  summary: string;
  /** A stretch of the horizontal axis that means something: from where the size had settled. */
  zone?: { from: number; label: string } | undefined;
  limit?: { value: number; label: string } | undefined;
  /** Where both axes begin and end; by the points, where nothing is said. */
  frame?: { along: readonly [number, number]; up: readonly [number, number] } | undefined;
  /** Moments of the horizontal axis that mean something: a pause, a stop. */
  moments?: readonly { at: number; label: string }[] | undefined;
}

type LineOf = Chart<"line", { x: number; y: number }[]>;

/** A line with its points and 90 % band. Colours are the page's own, in light, in dark and on paper; nothing moves. */
export function LineChart({ points, unit, summary, zone, limit, frame, moments }: LineChartProps) {
  const chart = useRef<LineOf>(null);

  useEffect(() => {
    const redraw = () => {
      chart.current?.resize();
      chart.current?.update("none");
    };
    const outside = [window.matchMedia("(prefers-color-scheme: dark)"), window.matchMedia("print")];
    for (const query of outside) query.addEventListener("change", redraw);
    // The page's own type may arrive after the first drawing.
    void document.fonts.ready.then(redraw);
    return () => {
      for (const query of outside) query.removeEventListener("change", redraw);
    };
  }, []);

  return (
    <div className={styles.chart}>
      <Line
        ref={chart}
        data={datasetsOf(points)}
        options={optionsOf({ points, unit, limit, frame })}
        plugins={[drawnBehind({ points, zone, limit, moments })]}
        aria-label={summary}
      />
    </div>
  );
}

function datasetsOf(points: readonly ChartPoint[]): ChartData<"line", { x: number; y: number }[]> {
  const edge = (of: "low" | "high") =>
    points.flatMap((point) => (point[of] === undefined ? [] : [{ x: point.at, y: point[of] }]));
  const unseen = { borderWidth: 0, pointRadius: 0 };
  return {
    datasets: [
      {
        data: points.map(({ at, value }) => ({ x: at, y: value })),
        borderColor: coloured("--accent"),
        borderWidth: 2.2,
        // A point at the end of the scale is drawn whole.
        clip: false as const,
        pointRadius: 4.5,
        pointBorderWidth: 2,
        pointBackgroundColor: coloured("--card"),
        pointBorderColor: coloured("--accent"),
      },
      { ...unseen, data: edge("low") },
      { ...unseen, data: edge("high"), fill: "-1", backgroundColor: coloured("--accent", 0.14) },
    ],
  };
}

function optionsOf({
  points,
  unit,
  limit,
  frame,
}: Pick<LineChartProps, "points" | "unit" | "limit" | "frame">): ChartOptions<"line"> {
  const heights = points
    .flatMap(({ value, low, high }) => [value, low ?? value, high ?? value])
    .concat(limit ? [limit.value] : []);
  const ticks = { color: coloured("--soft"), font: ({ chart }: { chart: Chart }) => ({ size: 15, family: fontOf(chart) }) };
  const [first, last] = frame?.along ?? [points[0]?.at ?? 0, points.at(-1)?.at ?? 1];
  const margin = (last - first || 1) * 0.03;
  return {
    animation: false,
    responsive: true,
    maintainAspectRatio: false,
    events: [],
    layout: { padding: { top: 6, right: 4 } },
    scales: {
      x: {
        type: "linear",
        min: first - margin,
        max: last + margin,
        grid: { display: false },
        border: { display: false },
        afterBuildTicks: (axis) => {
          axis.ticks = points.map(({ at }) => ({ value: at }));
        },
        ticks: {
          ...ticks,
          autoSkip: true,
          autoSkipPadding: 14,
          maxRotation: 0,
          callback: (value) => points.find(({ at }) => at === value)?.label ?? "",
        },
      },
      y: {
        type: "linear",
        ...(frame
          ? { min: frame.up[0], max: frame.up[1] }
          : { suggestedMin: Math.min(...heights), suggestedMax: Math.max(...heights) }),
        border: { display: false },
        grid: { color: coloured("--line") },
        ticks: {
          ...ticks,
          maxTicksLimit: 6,
          callback: (value, index, all) => label(Number(value), index === all.length - 1 ? unit : ""),
        },
      },
    },
  };
}

/** The unit stands once, at the top of the axis. */
const label = (value: number, unit: string): string =>
  [formatNumber(value, Number.isInteger(value) ? 0 : 1), unit].filter(Boolean).join(" ");

/** The zone and the limit line, which lie behind the line itself. */
const drawnBehind = ({
  points,
  zone,
  limit,
  moments = [],
}: Pick<LineChartProps, "points" | "zone" | "limit" | "moments">): Plugin<"line"> => ({
  id: "behind",
  beforeDatasetsDraw: (chart) => {
    const { ctx, chartArea, scales } = chart;
    const { left, right, top, bottom } = chartArea;
    ctx.save();
    ctx.font = `600 15px ${fontOf(chart)}`;
    ctx.textBaseline = "top";
    if (zone) {
      const from = Math.max(left, scales.x?.getPixelForValue(zone.from) ?? left);
      ctx.fillStyle = tokenColour(chart, "--met", 0.1);
      ctx.fillRect(from, top, right - from, bottom - top);
      ctx.fillStyle = tokenColour(chart, "--met");
      const width = ctx.measureText(zone.label).width;
      ctx.fillText(zone.label, Math.max(left, Math.min(from + 8, right - width - 4)), top + 6);
    }
    for (const { at, label: words } of moments) {
      const x = scales.x?.getPixelForValue(at) ?? left;
      ctx.strokeStyle = tokenColour(chart, "--soft");
      ctx.fillStyle = ctx.strokeStyle;
      ctx.setLineDash([2, 4]);
      ctx.beginPath();
      ctx.moveTo(x, top);
      ctx.lineTo(x, bottom);
      ctx.stroke();
      const width = ctx.measureText(words).width;
      ctx.fillText(words, x + 5 + width > right ? x - 5 - width : x + 5, bottom - 20);
    }
    if (limit) {
      const y = scales.y?.getPixelForValue(limit.value) ?? top;
      ctx.strokeStyle = tokenColour(chart, "--not-met");
      ctx.fillStyle = ctx.strokeStyle;
      ctx.setLineDash([5, 4]);
      ctx.beginPath();
      ctx.moveTo(left, y);
      ctx.lineTo(right, y);
      ctx.stroke();
      // The words stand at the end where the line keeps away from the limit.
      const away = (point: ChartPoint | undefined) => Math.abs((point?.value ?? limit.value) - limit.value);
      const atLeft = away(points[0]) > away(points.at(-1));
      ctx.textAlign = atLeft ? "left" : "right";
      ctx.fillText(limit.label, atLeft ? left + 4 : right - 4, y - top > 24 ? y - 20 : y + 6);
    }
    ctx.restore();
  },
});
