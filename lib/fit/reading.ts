/** How a reading stands against its limit. Unknown is never pass; nothing outweighs a finding that forbids. */
export type ReadingState = "met" | "close" | "unknown" | "not met" | "forbids";

/** A result that a person can see: the number, its limit, and why it is judged so. */
export interface Reading {
  /** Missing where it was not measured. */
  value?: number;
  unit?: string;
  standardError?: number;
  /** The limit as a number, in the unit of the value. */
  limit?: number;
  /** The limit as it is read out: "at most 10 mm". */
  limitText?: string;
  state: ReadingState;
  /** One plain sentence with the numbers in it. */
  why: string;
  /** An id of `sources.ts`. */
  source: string;
}
