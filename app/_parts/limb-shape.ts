import type { Bundle } from "@/lib/fit/bundle";
import type { LimbShape } from "./limb-map-geometry";

/** The shape that the limb map draws: the limb's length and its latest circumferences at both ends. */
export function limbShapeOf({ episode, limbMeasurements }: Bundle): LimbShape {
  const stations = limbMeasurements.at(-1)?.stations ?? [];
  const [first, last] = [stations[0], stations.at(-1)];
  const [distal, proximal] = episode.stationsFrom === "distal end" ? [first, last] : [last, first];
  return {
    side: episode.side,
    limbLengthMm: episode.limbLengthMm,
    distalCircumferenceMm: distal?.circumferenceMm,
    proximalCircumferenceMm: proximal?.circumferenceMm,
  };
}
