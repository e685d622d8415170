/** Signs that people type and the typeface lacks, in letters that it has. */
const written: Readonly<Record<string, string>> = {
  "≥": "at least ",
  "≤": "at most ",
  "→": "to ",
  "≈": "about ",
  "⌀": "diameter ",
  "\u202f": "\u00a0",
};

/**
 * A text in letters that can be set. What the typeface lacks would be left out or come out as another letter; it is named
 * instead, so that nobody at the bench reads a wrong word.
 *
 * @param has whether the typeface has a code point
 */
export const inLetters = (text: string, has: (codePoint: number) => boolean): string =>
  Array.from(text, (letter) => {
    const codePoint = letter.codePointAt(0) ?? 0;
    return letter === "\n" || has(codePoint) ? letter : (written[letter] ?? named(codePoint));
  })
    .join("")
    .replaceAll(/ {2,}/g, " ");

const named = (codePoint: number): string => `[U+${codePoint.toString(16).toUpperCase().padStart(4, "0")}]`;

/** Every text within, whatever holds it. */
export function allInLetters<Value>(value: Value, has: (codePoint: number) => boolean): Value {
  if (typeof value === "string") return inLetters(value, has) as Value & string;
  if (Array.isArray(value)) return value.map((entry) => allInLetters(entry, has)) as Value & unknown[];
  if (value === null || typeof value !== "object" || value instanceof Date) return value;
  return Object.fromEntries(Object.entries(value).map(([key, entry]) => [key, allInLetters(entry, has)])) as Value & object;
}
