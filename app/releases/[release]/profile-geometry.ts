import type { ReleaseSheet } from "@/lib/print/release-sheet";

export const profileBox = { width: 340, height: 190, top: 18, bottom: 166, words: 182 } as const;

export interface ProfileGeometry {
  levels: { x: number; distanceMm: number }[];
  /** Points of a polyline: both sides of the limb, and of the inside of the definitive socket. */
  limb: string[];
  definitive: string[];
}

const middle = 92;

/** The inside of the definitive socket and the limb from the side, as if both were round; null with fewer than two levels. */
export function profileGeometry(dimensions: ReleaseSheet["dimensions"]): ProfileGeometry | null {
  const first = dimensions[0];
  const last = dimensions.at(-1);
  if (!first || !last || first === last) return null;
  const span = last.distanceMm - first.distanceMm;
  const widest = Math.max(...dimensions.flatMap(({ definitiveMm, limbMm }) => [definitiveMm, limbMm ?? 0])) / Math.PI;
  const scale = Math.min((profileBox.width - 60) / span, 130 / widest);
  const x = (distanceMm: number) => 34 + (distanceMm - first.distanceMm) * scale;
  const outline = (circumferences: { distanceMm: number; mm: number }[]) =>
    [1, -1].map((sign) =>
      circumferences
        .map(({ distanceMm, mm }) => `${x(distanceMm).toFixed(1)},${(middle + (sign * mm * scale) / (2 * Math.PI)).toFixed(1)}`)
        .join(" "),
    );
  return {
    levels: dimensions.map(({ distanceMm }) => ({ x: x(distanceMm), distanceMm })),
    limb: outline(dimensions.flatMap(({ distanceMm, limbMm }) => (limbMm === undefined ? [] : [{ distanceMm, mm: limbMm }]))),
    definitive: outline(dimensions.map(({ distanceMm, definitiveMm }) => ({ distanceMm, mm: definitiveMm }))),
  };
}

export const profileWords = "dashed: limb; full: inside of the definitive socket";
export const noProfile = "A profile needs two levels or more.";
