import type { Aspect } from "@/lib/fit/words";

const order = ["anterior", "lateral", "posterior", "medial"] as const satisfies readonly Aspect[];

/**
 * The aspect whose quarter of the limb an angle lies in; 90° is lateral on either side.
 *
 * @example aspectOf(300) // => "medial"
 */
export const aspectOf = (angleDeg: number): Aspect => order[Math.floor((((angleDeg + 45) % 360) + 360) % 360 / 90)] ?? "anterior";
