/** Marks on the skin, as they are followed from look to look after doffing. */
import type { Strength } from "@/lib/fit";

type Blanching = "yes" | "no" | "not tested";

export interface MarkStory {
  /** Names the mark in its story; adjustments answer it by this name. */
  name: string;
  /** Distance of its middle from the distal end, in mm. */
  endMm: number;
  /** 0 anterior, 90 lateral, 180 posterior, 270 medial. */
  angleDeg: number;
  /** Around the limb and along it, in mm. */
  sizeMm: readonly [wide: number, high: number];
  /** How strong it was at each look, in order. A look past the end of the list does not mention the mark. */
  seen: readonly Strength[];
  /** At each look, the last one going on; yes where left out. */
  blanches?: readonly Blanching[];
  firm?: boolean;
  warm?: boolean;
  painful?: boolean;
  broken?: boolean;
  /** Where somebody saw when it went. */
  fadedAtMin?: number;
}

export interface LooksStory {
  /** Minutes after doffing. */
  at: readonly number[];
  marks: readonly MarkStory[];
  note?: string;
}

/** Marks of even strength, one on each aspect: what one wants to see. They are gone at the last look. */
export function evenMarks(
  endMm: number,
  { sizeMm = [26, 18], seen = ["faint", "none"] }: Partial<Pick<MarkStory, "sizeMm" | "seen">> = {},
): MarkStory[] {
  return ["front", "outer side", "back", "inner side"].map((name, index) => ({
    name,
    endMm,
    angleDeg: index * 90,
    sizeMm,
    seen,
  }));
}

/** The marks of one look, in the words of the form. */
export function marksAtLook(marks: readonly MarkStory[], look: number, markId: (name: string) => string) {
  return marks.flatMap(
    ({ name, endMm, angleDeg, sizeMm: [widthMm, heightMm], seen, blanches = ["yes"], fadedAtMin, ...signs }) => {
      const strength = seen[look];
      if (strength === undefined) return [];
      const gone = strength === "none";
      const firstGone = gone && seen[look - 1] !== "none";
      return {
        ...(gone ? {} : signs),
        markId: markId(name),
        distanceFromEndMm: endMm,
        angleDeg,
        widthMm,
        heightMm,
        strength,
        blanches: gone ? "yes" : (blanches[look] ?? blanches.at(-1)),
        fadedAtMin: firstGone ? fadedAtMin : undefined,
      };
    },
  );
}

/** As the store keeps a mark: what nobody said is not so. */
export const markOnPaper = ({ markId, ...mark }: ReturnType<typeof marksAtLook>[number]) => ({
  ...{ firm: false, warm: false, painful: false, broken: false },
  ...mark,
  id: markId,
  fadedAtMin: mark.fadedAtMin ?? null,
});
