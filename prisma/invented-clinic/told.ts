/** What a story says of a limb, of a socket to be made, and of a fitting. */
import type { AdjustmentKind, Aspect, CheckAnswer, CheckKey, Station, Third } from "@/lib/fit";
import type { Who } from "./accounts";
import type { LooksStory } from "./skin";

export interface LimbMeasured {
  id: string;
  stations: Station[];
}

export interface AdjustmentStory {
  kind: AdjustmentKind;
  aspect?: Aspect;
  third?: Third;
  amount?: number;
  unit?: "mm" | "percent" | "deg";
  reason: string;
  answers?: string;
}

export interface BenchWords {
  lengthMm?: number;
  material?: string;
  wallMm?: number;
  trimLines?: string;
  benchNote?: string;
  /** A day to come has a negative number. */
  neededDaysAgo?: number;
}

export type SocketSpecification = BenchWords & { limb: LimbMeasured } & (
    | { tighterPercent: number }
    | { stations: Station[]; derivedFromId?: string; adjustments: AdjustmentStory[] }
  );

export interface FittingStory {
  place?: "clinic" | "home" | "video";
  whoWasThere?: string;
  /** Every check is met but these. */
  checks?: Partial<Record<CheckKey, CheckAnswer>>;
  /** By the load in N, how far the limb moved in the socket, in mm. */
  drops: Record<number, number>;
  /** By movement, how far the joint goes without the socket and with it, in degrees. */
  motion: Record<string, readonly [withoutDeg: number, withDeg: number]>;
  comfort?: number;
  pain?: number;
  words?: string;
  note?: string;
  looks?: LooksStory;
  who?: Who;
}
