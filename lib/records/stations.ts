import { InputRefused } from "./refusals";

/** Stations go along the limb: each distance is greater than the one before. */
export function refuseDisorder(stations: readonly { distanceMm: number }[], field = "stations"): void {
  stations.forEach(({ distanceMm }, index) => {
    const before = stations[index - 1];
    if (before && distanceMm <= before.distanceMm)
      throw new InputRefused({
        [`${field}.${index}.distanceMm`]: `Distances go up from row to row: more than ${before.distanceMm} mm is expected here.`,
      });
  });
}
