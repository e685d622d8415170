/** What a line chart is made of. */

export interface ChartPoint {
  /** Where it stands on the horizontal axis: a number of days, of minutes. */
  at: number;
  /** What is written there: "14 Sep". */
  label: string;
  value: number;
  /** Ends of the 90 % interval; left out where the error is not known. */
  low?: number | undefined;
  high?: number | undefined;
  /** Written at the point: the number of a socket. */
  name?: string | undefined;
}

export interface LineChartProps {
  points: readonly ChartPoint[];
  unit: string;
  /** The picture in one sentence, for those who hear it. */
  summary: string;
  /** A stretch of the horizontal axis that means something: from where the size had settled. */
  zone?: { from: number; label: string } | undefined;
  /** Where its words stand in the caption too, a small chart leaves them out. */
  limit?: { value: number; label: string; isInCaption?: boolean } | undefined;
  /** Where the axes begin and end; by the points, where nothing is said. */
  frame?: { along: readonly [number, number]; up?: readonly [number, number] | undefined } | undefined;
  /** Moments of the horizontal axis that mean something: a pause, a stop. */
  moments?: readonly { at: number; label: string }[] | undefined;
  /** Where nothing was measured between two points: the line is broken there. */
  gaps?: readonly number[] | undefined;
  /** A second line, dashed with square points: the same measure on another occasion. */
  beside?: { points: readonly ChartPoint[]; gaps: readonly number[] } | undefined;
  /** How the 90 % interval is drawn: a band for what goes on between the points, bars for what does not. */
  interval?: "band" | "bars" | undefined;
  /** Stretches of the horizontal axis that are shaded behind the line. */
  spans?: readonly { from: number; to: number; label: string }[] | undefined;
  /** What is written along the horizontal axis, with a line upwards each; the points’ own labels, where nothing is said. */
  ticks?: readonly { at: number; label: string }[] | undefined;
  /** What stands at whole numbers of the vertical axis, from 0: "none", "faint". */
  upWords?: readonly string[] | undefined;
  /** Room for the vertical axis, so that charts one above the other begin at the same place. */
  upWidth?: number | undefined;
}

/** What is drawn; the summary is heard. */
export type Drawn = Omit<LineChartProps, "summary">;
