import type { Option } from "./fields";

/** Words of a list as choices of a field; hyphens of keys become spaces for the eye. */
export const wordOptions = (words: readonly string[]): Option[] =>
  words.map((word) => ({ value: word, label: word.replaceAll("-", " ") }));
