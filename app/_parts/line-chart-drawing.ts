/** What a line chart shows beside its lines, drawn on the canvas in the page's own colours. */

import type { Plugin } from "chart.js";
import { fontOf, tokenColour } from "./chart-colours";
import type { ChartPoint, Drawn } from "./line-chart-props";

/** Spans, the zone and the limit line, which lie behind the line itself. */
export const drawnBehind = ({ points, beside, zone, limit, moments = [], spans = [] }: Drawn): Plugin<"line"> => ({
  id: "behind",
  beforeDatasetsDraw: (chart) => {
    const { ctx, chartArea, scales } = chart;
    const { left, right, top, bottom } = chartArea;
    ctx.save();
    ctx.font = `600 15px ${fontOf(chart)}`;
    ctx.textBaseline = "top";
    for (const span of spans) {
      const [from, to] = [span.from, span.to].map((at) => scales.x?.getPixelForValue(at) ?? left) as [number, number]; // two moments, two places
      ctx.fillStyle = tokenColour(chart, "--unknown", 0.13);
      ctx.fillRect(from, top, to - from, bottom - top);
      ctx.fillStyle = tokenColour(chart, "--unknown");
      ctx.fillRect(from, bottom - 3, to - from, 3);
      if (ctx.measureText(span.label).width + 8 < to - from && bottom - top > 80) ctx.fillText(span.label, from + 6, bottom - 24);
    }
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
      const all = [...points, ...(beside?.points ?? [])].sort((a, b) => a.at - b.at);
      const atLeft = away(all[0]) > away(all.at(-1));
      ctx.textAlign = atLeft ? "left" : "right";
      const isSmall = right - left < 320 || bottom - top < 80;
      if (!(limit.isInCaption && isSmall))
        ctx.fillText(limit.label, atLeft ? left + 4 : right - 4, y - top > 24 ? y - 20 : y + 6);
    }
    ctx.restore();
  },
});

/** Bars of the intervals, and the names of the points above them. */
export const drawnAbove = ({ points, interval, beside }: Drawn): Plugin<"line"> => ({
  id: "above",
  afterDatasetsDraw: (chart) => {
    const { ctx, scales } = chart;
    const place = ({ at, value }: { at: number; value: number }) => ({
      x: scales.x?.getPixelForValue(at) ?? 0,
      y: scales.y?.getPixelForValue(value) ?? 0,
    });
    ctx.save();
    ctx.font = `600 15px ${fontOf(chart)}`;
    ctx.textAlign = "center";
    if (interval === "bars") {
      ctx.strokeStyle = tokenColour(chart, "--accent");
      ctx.lineWidth = 1.6;
      for (const { at, low, high, value } of points) {
        const [top, point, bottom] = [high ?? value, value, low ?? value].map((of) => place({ at, value: of })) as Place[]; // three values, three places
        if (!top || !point || !bottom || bottom.y - top.y < 1) continue;
        ctx.beginPath();
        for (const [end, near] of [
          [top.y, Math.max(top.y, point.y - pointHeight)],
          [bottom.y, Math.min(bottom.y, point.y + pointHeight)],
        ] as const) {
          ctx.moveTo(point.x, near);
          ctx.lineTo(point.x, end);
          ctx.moveTo(point.x - 4, end);
          ctx.lineTo(point.x + 4, end);
        }
        ctx.stroke();
      }
    }
    ctx.fillStyle = tokenColour(chart, "--ink");
    ctx.textBaseline = "bottom";
    for (const point of [...points, ...(beside?.points ?? [])]) {
      if (point.name === undefined) continue;
      const { x, y } = place({ at: point.at, value: interval === "bars" ? (point.high ?? point.value) : point.value });
      ctx.fillText(point.name, x, y - 8);
    }
    ctx.restore();
  },
});

type Place = { x: number; y: number };
/** From the middle of a point to its edge. */
const pointHeight = 5.5;
