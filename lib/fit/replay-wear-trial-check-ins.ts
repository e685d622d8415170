/** What the wearer said during a trial, with what was put right later. */
import type { TrialEvent } from "./bundle";
import type { Placed } from "./replay-wear-trial-clock";
import type { TimedEvent, TrialProblem } from "./replay-wear-trial-order";

export const scales = ["comfort", "pain", "exertion"] as const;
export type Scale = (typeof scales)[number];

/** What was felt, and where. */
export type Felt = Extract<TrialEvent, { kind: "check-in" }>["feelings"][number];

export interface Ratings {
  comfort: number;
  pain: number;
  exertion: number;
  feelings: Felt[];
}

export interface TrialCheckIn extends Ratings {
  id: string;
  /** As it was recorded. */
  at: string;
  wornMinutes: number;
  /** Said while the trial ran or paused. What was said outside counts only where it is bad. */
  during: boolean;
  reportedBy?: "wearer" | "carer" | "clinician";
  /** As it was first said; present where it was put right. */
  asFirstSaid?: Ratings;
}

export type Correction = Extract<TrialEvent, { kind: "corrected" }>;

export interface CorrectedCheckIns {
  checkIns: TrialCheckIn[];
  /** What corrections of nothing say: nobody knows when it was felt, but it counts where it is bad. */
  stray: Correction[];
  problems: TrialProblem[];
}

/**
 * Puts check-ins right, in the order in which the corrections were made. A correction that cannot be trusted, or that
 * was made before the check-in, only ever makes it worse.
 */
export function correctCheckIns(placed: readonly Placed<"check-in">[], timed: readonly TimedEvent[]): CorrectedCheckIns {
  const checkIns = placed.map(asSaid);
  const stray: Correction[] = [];
  const problems: TrialProblem[] = [];
  const corrections = timed.flatMap(({ event, atMs, trusted }) => (event.kind === "corrected" ? [{ event, atMs, trusted }] : []));
  const placeOf = new Map(corrections.length === 0 ? [] : placed.map(({ event }, index) => [event.id, index]));
  for (const { event, atMs, trusted } of corrections) {
    const index = placeOf.get(event.corrects) ?? -1;
    const checkIn = checkIns[index];
    const saidMs = placed[index]?.atMs;
    if (!checkIn || saidMs === undefined) {
      stray.push(event);
      problems.push({
        eventId: event.id,
        why: `The correction ${event.id} is of ${event.corrects}, which is no check-in; it counts where it is bad.`,
      });
      continue;
    }
    if (atMs < saidMs)
      problems.push({ eventId: event.id, why: `The correction ${event.id} was made before the check-in ${event.corrects}.` });
    checkIns[index] = {
      ...checkIn,
      asFirstSaid: checkIn.asFirstSaid ?? ratingsOf(checkIn),
      ...(trusted && atMs >= saidMs ? putRight(checkIn, event) : worseOf(checkIn, event)),
    };
  }
  return { checkIns, stray, problems };
}

function asSaid({ event, wornMs, during }: Placed<"check-in">): TrialCheckIn {
  const { id, at, comfort, pain, exertion, feelings, reportedBy } = event;
  const checkIn: TrialCheckIn = { id, at, wornMinutes: wornMs / 60_000, during, comfort, pain, exertion, feelings };
  if (reportedBy !== undefined) checkIn.reportedBy = reportedBy;
  return checkIn;
}

const ratingsOf = ({ comfort, pain, exertion, feelings }: Ratings): Ratings => ({ comfort, pain, exertion, feelings });

const putRight = (said: Ratings, correction: Correction): Ratings => ({
  comfort: correction.comfort ?? said.comfort,
  pain: correction.pain ?? said.pain,
  exertion: correction.exertion ?? said.exertion,
  feelings: correction.feelings ?? said.feelings,
});

const worseOf = (said: Ratings, correction: Correction): Ratings => ({
  comfort: Math.min(said.comfort, correction.comfort ?? said.comfort),
  pain: Math.max(said.pain, correction.pain ?? said.pain),
  exertion: Math.max(said.exertion, correction.exertion ?? said.exertion),
  feelings: [...said.feelings, ...(correction.feelings ?? [])],
});

/** A check-in that now sounds better than it was first said. */
export const isSoftened = ({ asFirstSaid, comfort, pain, feelings }: TrialCheckIn): boolean =>
  asFirstSaid !== undefined &&
  (comfort > asFirstSaid.comfort ||
    pain < asFirstSaid.pain ||
    asFirstSaid.feelings.some((felt) => !feelings.some(({ kind }) => kind === felt.kind)));
