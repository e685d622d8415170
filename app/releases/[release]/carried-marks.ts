import type { MapMark } from "@/app/_parts/limb-map-marks";
import { placeOf } from "@/lib/print/release-sheet";
import type { Evidence } from "@/lib/records/see-release";

/** Where the carried adjustments go, drawn as the middle of the region that each names, with its number in the list. */
export function carriedMarks({ episode, carried }: Evidence["bundle"]): MapMark[] {
  return carried.flatMap((adjustment, index) => {
    const place = placeOf(adjustment, episode.limbLengthMm);
    if (!place) return [];
    return [
      {
        ...place,
        id: adjustment.id,
        number: index + 1,
        widthMm: 30,
        heightMm: episode.limbLengthMm / 8,
        strength: "faint" as const,
        blanches: "not tested" as const,
        firm: false,
        warm: false,
        painful: false,
        broken: false,
        fadedAtMin: null,
        grade: 1,
      },
    ];
  });
}

/** The list beside the map says the rest. */
export const carriedPlaces = "A number stands at the middle of the region that an adjustment of the list names.";
export const carriedMapTitle = "Where the carried adjustments go";
export const noPlaceCarried = "No carried adjustment names a place on the limb.";
