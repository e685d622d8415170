/** How a check socket was tried: what a comparison has to know before it believes a difference. */
import type { Bundle } from "./bundle";
import { gatherEvidence } from "./evidence";
import { counted, figure } from "./figures";
import { defaultLimits, type Limits } from "./limits";

export interface HowTried {
  socketId: string;
  /** The latest fitting. */
  fitting?: { id: string; at: string; place: string };
  /** The latest trial that ended or was stopped. */
  trial?: {
    id: string;
    beganAt: string;
    wornMinutes: number;
    plannedMinutes: number;
    loadKg?: number;
    loadDistanceMm?: number;
  };
}

/**
 * Where and when a socket was fitted, and how long and with what load it was worn in its latest trial.
 *
 * @throws FitInputError where there is no socket of that id
 * @source plain
 */
export function howTried(
  bundle: Bundle,
  socketId: string,
  { limits = defaultLimits, asOf = bundle.asOf }: { limits?: Limits; asOf?: string } = {},
): HowTried {
  const { fitting, trial } = gatherEvidence(bundle, { limits, asOf, socketId });
  return {
    socketId,
    ...(fitting ? { fitting: { id: fitting.id, at: fitting.at, place: fitting.place } } : {}),
    ...(trial
      ? {
          trial: {
            id: trial.record.id,
            beganAt: new Date(trial.beganMs).toISOString(),
            wornMinutes: trial.replay.wornMinutes,
            plannedMinutes: trial.record.plan.minutes,
            ...(trial.record.plan.loadKg === undefined ? {} : { loadKg: trial.record.plan.loadKg }),
            ...(trial.record.plan.loadDistanceMm === undefined ? {} : { loadDistanceMm: trial.record.plan.loadDistanceMm }),
          },
        }
      : {}),
  };
}

/** Wearing times that lie this far apart are told; below it nobody keeps time so well. From memory. */
const tellMinutes = 2;

/**
 * One sentence where trials differ in what would change marks and comfort by itself; undefined where they do not, or
 * where fewer than two were made.
 *
 * @source plain
 */
export function triedOtherwise(tried: readonly HowTried[]): string | undefined {
  const trials = tried.flatMap(({ trial }) => (trial ? [trial] : []));
  if (trials.length < 2) return undefined;
  const [shortest, longest] = [Math.min, Math.max].map((most) => most(...trials.map(({ wornMinutes }) => wornMinutes))) as [
    number,
    number,
  ]; // two functions give two numbers
  const loads = new Set(trials.map(({ loadKg = 0, loadDistanceMm = 0 }) => `${loadKg} kg at ${loadDistanceMm} mm`));
  const differs = [
    longest - shortest >= tellMinutes && `worn for ${figure(shortest, 0)} to ${counted(Math.round(longest), "minute")}`,
    loads.size > 1 && "with other loads",
  ].filter((words) => words !== false);
  if (differs.length === 0) return undefined;
  return `The trials were not alike: ${differs.join(", ")}. Fewer and fainter marks may come from that.`;
}
