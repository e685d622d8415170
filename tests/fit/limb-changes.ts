/** Measurements of the ready bundle's limb, changed or added. */
import type { Bundle } from "@/lib/fit";

export type Measurement = Bundle["limbMeasurements"][number];

export const measured = (bundle: Bundle, index: number): Measurement => {
  const found = bundle.limbMeasurements[index];
  if (!found) throw new Error("the ready bundle has two measurements");
  return found;
};
/** One measurement more: that of the socket, changed by so many percent of volume. */
export function andMeasured(bundle: Bundle, at: string, percent = 0): Measurement {
  const last = measured(bundle, 1);
  const another: Measurement = {
    ...structuredClone(last),
    id: `lm${bundle.limbMeasurements.length + 1}`,
    at,
    stations: last.stations.map(({ distanceMm, circumferenceMm }) => ({
      distanceMm,
      circumferenceMm: circumferenceMm * Math.sqrt(1 + percent / 100),
    })),
  };
  bundle.limbMeasurements.push(another);
  return another;
}
