/** What a device knows of a trial: all that it needs to run it with no network. The server makes it, the device keeps it. */
import type { DrawnLimb } from "@/app/_parts/limb-shape";
import type { Inspection, TrialEvent, TrialPlan } from "@/lib/fit/bundle";
import type { TrialLimits } from "@/lib/fit/replay-wear-trial-verdict";

export interface LiveTrial {
  trialId: string;
  /** Not told to the wearer's own link, which shows no name to whoever finds the phone. */
  wearer?: string;
  /** "left transtibial": the side and the level. */
  limbWords: string;
  isUpperLimb: boolean;
  socketNumber: number;
  plan: TrialPlan;
  watchedBy?: string;
  events: TrialEvent[];
  looks: Inspection[];
  /** The numbers that marks have in the record, by their ids. */
  markNumbers: [string, number][];
  limb: DrawnLimb;
  limits: TrialLimits;
  clinic: { name: string; phone?: string; invented: boolean };
  /** Why nothing can be added any more. */
  locked?: string;
  /** The server's clock when this was sent, ISO 8601. */
  serverNow: string;
}

export interface SentLook {
  id: string;
  at: string;
  minutesAfterDoffing: number;
  marks: Record<string, unknown>[];
  noMarks: boolean;
  note?: string;
}

/** What became of something that was sent. */
export interface Became {
  id: string;
  became: "stored" | "known" | "set aside";
  why?: string;
}
