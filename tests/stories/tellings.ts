/** What the invented clinic tells of an episode as of a day, in words that must be the same on every day. */
import { assessReadiness, nextStep, outcomesOfAdjustments, seriesOf, trendsOf } from "@/lib/fit";
import { clinicDay } from "@/lib/records/clinic-time";
import { stageOf } from "@/lib/records/stage";
import { episodesOnPaper, type Outcome } from "@/prisma/invented-clinic";
import { clinicTimeZone } from "@/prisma/invented-clinic/accounts";
import { calendarOf } from "@/prisma/invented-clinic/calendar";
import type { EpisodeOnPaper } from "@/prisma/invented-clinic/episode-on-paper";

export interface Telling {
  outcome: Outcome;
  /** Everything else, by what it is: gates with their reasons, what is due, what the limb did, what came of adjustments. */
  facts: Record<string, string>;
}

/** As the store judges it: under a standing release as of the moment of that release. */
function tellingOf(episode: EpisodeOnPaper, today: Date): Telling {
  const { release } = episode;
  const bundle = episode.bundle(release?.at ?? today);
  const assessment = assessReadiness(bundle);
  const next = nextStep(release ? episode.bundle(today) : bundle, assessment);
  const resting = episode.closedAt !== null || episode.onHoldAt !== null;
  const series = seriesOf(bundle);
  const { spans, whole } = trendsOf(bundle, series);
  return {
    outcome: {
      number: episode.wearer.clinicNumber,
      level: bundle.episode.level,
      stage: stageOf(episode, bundle, next),
      nextStep: resting ? null : next.step,
      decision: assessment.decision,
    },
    facts: {
      sentence: withoutNumbers(assessment.sentence),
      "why next": withoutNumbers(next.why),
      due: resting || next.dueOn === null ? "never" : next.dueOn < clinicDay(today, clinicTimeZone) ? "late" : "not late",
      ...Object.fromEntries(assessment.gates.map(({ id, state, why }) => [id, `${state}: ${withoutNumbers(why)}`])),
      "what would change it": assessment.next
        .map(({ gate, action, why }) => withoutNumbers(`${gate}: ${action}, ${why}`))
        .join("; "),
      "the limb between sockets": [...spans, ...(whole ? [whole] : [])]
        .map(({ fromNumber, toNumber, limb }) => `${fromNumber}–${toNumber} ${limb.state}`)
        .join("; "),
      "what came of adjustments": outcomesOfAdjustments(series)
        .map(({ adjustmentId: _, ...came }) => JSON.stringify(came))
        .join("; "),
    },
  };
}

/** Of every episode that was not struck out. */
export const tellingsOn = (today: Date): Telling[] =>
  episodesOnPaper(calendarOf(today))
    .filter(({ struckOutAt }) => struckOutAt === null)
    .map((episode) => tellingOf(episode, today));

export const outcomesOnPaper = (today: Date): Outcome[] => tellingsOn(today).map(({ outcome }) => outcome);

/** A day more or less is no other story. */
const withoutNumbers = (sentence: string): string =>
  sentence
    .replaceAll(/\d+(?:[.,]\d+)?/g, "#")
    .replaceAll(/\b(?:January|February|March|April|May|June|July|August|September|October|November|December)\b/g, "month")
    .replaceAll(/# (day|week|month|minute|hour)s?\b/g, "# $1");
