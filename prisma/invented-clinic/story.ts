/**
 * A wearer's story, told in the order in which it happened. Each thing that happened is the command that a
 * screen would call; the loader sorts what happened in all stories by time.
 */
import type { CautionKind } from "@/lib/fit";
import { addWearer } from "@/lib/records/add-wearer";
import { addCaution } from "@/lib/records/change-wearer";
import type { Calendar, When } from "./calendar";
import type { WearerOnPaper } from "./episode-on-paper";
import { type EpisodeOpened, EpisodeStory } from "./episode-story";
import { stableId } from "./stable-id";
import { Timeline } from "./timeline";

/** A story is a function of the calendar, so that its days are counted from any day of loading. */
export type Story = (calendar: Calendar) => Timeline;

interface WearerAdded {
  number: string;
  name: string;
  ageYears: number;
  heightMm: number;
  massKg: number;
  handedness: "right" | "left" | "both" | "not said";
  occupation: string;
  cautions?: { kind: CautionKind; note?: string }[];
}

export interface WearerStory {
  timeline: Timeline;
  caution: (when: When, caution: { kind: CautionKind; note?: string }) => void;
  episode: (when: When, opened: EpisodeOpened) => EpisodeStory;
}

export function wearer(
  key: string,
  calendar: Calendar,
  when: When,
  { number, ageYears, massKg, ...person }: WearerAdded,
): WearerStory {
  const timeline = new Timeline(key, calendar);
  const wearerId = stableId(`wearer ${number}`);
  const birthOn = calendar.day(Math.round(ageYears * 365.25));
  const { cautions = [] } = person;
  const onPaper: WearerOnPaper = { clinicNumber: number, birthOn, bodyMassKg: massKg, cautions: [...cautions] };
  timeline.add(when, "wearer added", ({ assistant }) =>
    addWearer(assistant, { ...person, id: wearerId, clinicNumber: number, birthOn, bodyMassKg: massKg }),
  );
  return {
    timeline,
    caution: (at, caution) => {
      timeline.add(at, "caution added", ({ assistant }) => addCaution(assistant, { wearerId, ...caution }));
      onPaper.cautions.push(caution);
    },
    episode: (at, opened) => new EpisodeStory(timeline, { id: wearerId, onPaper }, at, opened),
  };
}
