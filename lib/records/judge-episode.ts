/** An episode with its assessment and its next step: one way for the pages, the kept columns and the export. */
import {
  type Assessment,
  assessReadiness,
  type Bundle,
  type Limits,
  limitsOfVersion,
  limitValue,
  type NextStep,
  nextStep,
} from "@/lib/fit";
import { type EpisodeWhole, toBundle } from "./bundle-of";
import { clinicDay } from "./clinic-time";
import { awaitsCountersignature, releaseMeaning } from "./meanings";

export interface JudgedEpisode {
  bundle: Bundle;
  assessment: Assessment;
  next: NextStep;
}

/**
 * Judged as of now; an episode under a standing release as of the moment of that release and by the limits of that day,
 * for its evidence is locked and grows no older.
 */
export function judgeEpisode(
  episode: EpisodeWhole,
  { asOf, timeZone, limits }: { asOf: Date; timeZone: string; limits: Limits },
): JudgedEpisode {
  const release = episode.signOffs.find(({ meaning, withdrawal }) => meaning === releaseMeaning && withdrawal === null);
  const bundle = toBundle(episode, { asOf: release?.at ?? asOf, timeZone });
  const assessment = assessReadiness(bundle, release ? limitsOfVersion(release.rulesVersion) : limits);
  const next = nextStep(release ? toBundle(episode, { asOf, timeZone }) : bundle, assessment, limits);
  return { bundle, assessment, next: withStory(next, episode, { timeZone, limits }) };
}

/** What the store knows and the bundle does not: since when the episode waits, and why a signature was withdrawn. */
function withStory(next: NextStep, episode: EpisodeWhole, { timeZone, limits }: { timeZone: string; limits: Limits }): NextStep {
  if (next.step === "measure" && episode.measurements.length === 0) {
    const due = new Date(episode.openedAt.getTime() + limitValue(limits, "measure-days") * 86_400_000);
    return { ...next, dueOn: clinicDay(due, timeZone) };
  }
  const waiting = episode.signOffs.find(awaitsCountersignature);
  if (waiting) {
    const dueOn = clinicDay(new Date(waiting.at.getTime() + limitValue(limits, "sign-days") * 86_400_000), timeZone);
    return {
      ...next,
      step: "sign",
      who: "prosthetist",
      why: `${waiting.byName} signed the release; a second prosthetist signs it too.`,
      dueOn,
    };
  }
  const withdrawn = episode.signOffs.findLast(({ withdrawal }) => withdrawal !== null)?.withdrawal;
  if (!withdrawn || (next.step !== "sign" && next.step !== "release")) return next;
  const dueOn = clinicDay(new Date(withdrawn.at.getTime() + limitValue(limits, "sign-days") * 86_400_000), timeZone);
  return {
    ...next,
    why: `${withdrawn.byName} withdrew a signature: ${withdrawn.why} ${next.why}`,
    dueOn: next.dueOn !== null && next.dueOn > dueOn ? next.dueOn : dueOn,
  };
}
