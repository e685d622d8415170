/** How much of a disc lies in a rectangle. An ellipse becomes a disc when both its axes are scaled. */

export interface Rectangle {
  left: number;
  right: number;
  bottom: number;
  top: number;
}

/**
 * Part of the unit disc's area that lies in a rectangle, exact.
 *
 * @param rectangle in radii from the disc's centre; a side may be infinite
 * @returns 0…1
 *
 * @example
 * discInRectangle({ left: 0, right: 1, bottom: 0, top: 1 })
 * // => 0.25
 */
export function discInRectangle({ left, right, bottom, top }: Rectangle): number {
  if (right <= left || top <= bottom) return 0;
  const area = belowLeft(right, top) - belowLeft(left, top) - belowLeft(right, bottom) + belowLeft(left, bottom);
  return Math.min(1, Math.max(0, area / Math.PI));
}

/** Area of the disc to the left of x and below y. */
function belowLeft(x: number, y: number): number {
  const toX = Math.min(1, Math.max(-1, x));
  if (y >= 1) return 2 * areaUnderArc(-1, toX);
  if (y <= -1) return 0;
  // Between −edge and edge the line at y cuts the disc; outside, the disc is wholly below it or wholly above.
  const edge = Math.sqrt(1 - y * y);
  const cutTo = Math.min(edge, Math.max(-edge, toX));
  const cut = areaUnderArc(-edge, cutTo) + y * (cutTo + edge);
  if (y < 0) return cut;
  return cut + 2 * areaUnderArc(-1, Math.min(toX, -edge)) + 2 * areaUnderArc(edge, Math.max(toX, edge));
}

/** ∫ √(1 − u²) du */
const areaUnderArc = (from: number, to: number): number => antiderivative(to) - antiderivative(from);
const antiderivative = (u: number): number => (u * Math.sqrt(Math.max(0, 1 - u * u)) + Math.asin(u)) / 2;
