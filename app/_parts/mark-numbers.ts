/** Marks are told apart by number: one mark has the same through all looks at it and all versions of a fitting. */
import { gradeMark, type Inspection, type SkinMark } from "@/lib/fit";

interface Look {
  recordedAt: Date;
  marks: readonly { markId: string }[];
}

/**
 * The number of every mark, in the order in which they were first written down. A look or a correction that comes later
 * only adds numbers; a mark that a correction took out keeps its own, and nobody else gets it.
 *
 * @example numbersOfMarks([{ recordedAt: new Date(0), marks: [{ markId: "a" }, { markId: "b" }] }]).get("b") // => 2
 */
export function numbersOfMarks(looks: readonly Look[]): ReadonlyMap<string, number> {
  const numbers = new Map<string, number>();
  const byRecord = looks.toSorted((a, b) => a.recordedAt.getTime() - b.recordedAt.getTime());
  for (const { markId } of byRecord.flatMap(({ marks }) => marks))
    if (!numbers.has(markId)) numbers.set(markId, numbers.size + 1);
  return numbers;
}

/** A mark of a look with its grade at that time and its number. One that the numbers do not know gets 0: it never has. */
export const markAt = (
  { minutesAfterDoffing }: Pick<Inspection, "minutesAfterDoffing">,
  mark: SkinMark,
  numbers: ReadonlyMap<string, number>,
) => ({ ...mark, grade: gradeMark(mark, minutesAfterDoffing), number: numbers.get(mark.id) ?? 0 });
