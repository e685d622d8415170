/** What the wearer said during a trial, with what was put right later. */
import type { TrialEvent } from "./bundle";
import { instantMs } from "./instant";
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
  /** The worst of all that was said before; present where it was put right. */
  worstSaid?: Ratings;
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
export function correctCheckIns(said: readonly TrialCheckIn[], timed: readonly TimedEvent[]): CorrectedCheckIns {
  const checkIns = [...said];
  const stray: Correction[] = [];
  const problems: TrialProblem[] = [];
  const corrections = timed.filter(isCorrection);
  const placeOf = placesOf(new Set(corrections.map(({ event }) => event.corrects)), checkIns);
  for (const { event, atMs, trusted } of corrections) {
    const index = placeOf.get(event.corrects) ?? -1;
    const checkIn = checkIns[index];
    if (!checkIn) {
      stray.push(event);
      problems.push({
        eventId: event.id,
        why: `The correction ${event.id} is of ${event.corrects}, which is no check-in; it counts where it is bad.`,
      });
      continue;
    }
    const saidMs = instantMs(checkIn.at, "at");
    if (atMs < saidMs)
      problems.push({ eventId: event.id, why: `The correction ${event.id} was made before the check-in ${event.corrects}.` });
    const asFirstSaid = checkIn.asFirstSaid ?? ratingsOf(checkIn);
    const worstSaid = worseOf(checkIn.worstSaid ?? ratingsOf(checkIn), ratingsOf(checkIn));
    const now = trusted && atMs >= saidMs ? putRight(checkIn, event) : worseOf(checkIn, event);
    checkIns[index] = Object.assign({}, checkIn, { asFirstSaid, worstSaid }, now);
  }
  return { checkIns, stray, problems };
}

/** Where the check-ins are that were put right: few of many. */
function placesOf(ids: ReadonlySet<string>, checkIns: readonly TrialCheckIn[]): Map<string, number> {
  const places = new Map<string, number>();
  if (ids.size > 0)
    for (const [place, { id }] of checkIns.entries()) {
      if (ids.has(id)) places.set(id, place);
    }
  return places;
}

const isCorrection = (timed: TimedEvent): timed is TimedEvent & { event: Correction } => timed.event.kind === "corrected";

/** A check-in as it was first said, placed in the trial. */
export function asSaid(event: Extract<TrialEvent, { kind: "check-in" }>, wornMinutes: number, during: boolean): TrialCheckIn {
  const { id, at, comfort, pain, exertion, feelings, reportedBy } = event;
  // Written out twice: a field that is added afterwards costs a long trial as much as all the others.
  return reportedBy === undefined
    ? { id, at, wornMinutes, during, comfort, pain, exertion, feelings }
    : { id, at, wornMinutes, during, comfort, pain, exertion, feelings, reportedBy };
}

const ratingsOf = ({ comfort, pain, exertion, feelings }: Ratings): Ratings => ({ comfort, pain, exertion, feelings });

const putRight = (said: Ratings, correction: Pick<Correction, keyof Ratings>): Ratings => ({
  comfort: correction.comfort ?? said.comfort,
  pain: correction.pain ?? said.pain,
  exertion: correction.exertion ?? said.exertion,
  feelings: correction.feelings ?? said.feelings,
});

const worseOf = (said: Ratings, correction: Pick<Correction, keyof Ratings>): Ratings => ({
  comfort: Math.min(said.comfort, correction.comfort ?? said.comfort),
  pain: Math.max(said.pain, correction.pain ?? said.pain),
  exertion: Math.max(said.exertion, correction.exertion ?? said.exertion),
  feelings: [...said.feelings, ...(correction.feelings ?? [])],
});

/** A check-in that now sounds better than it once did. */
export const isSoftened = ({ worstSaid, comfort, pain, feelings }: TrialCheckIn): boolean =>
  worstSaid !== undefined &&
  (comfort > worstSaid.comfort ||
    pain < worstSaid.pain ||
    worstSaid.feelings.some((felt) => !feelings.some(({ kind }) => kind === felt.kind)));
