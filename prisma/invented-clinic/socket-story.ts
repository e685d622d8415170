/** One check socket's story: specified, made, fitted, worn, and what came after it. */
import { checksOf, type EpisodeRecord, type Level, proposeDimensions, type SocketState, type Station } from "@/lib/fit";
import { carryAdjustment } from "@/lib/records/carry-adjustment";
import { moveSocket } from "@/lib/records/move-socket";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { recordFitting } from "@/lib/records/record-fitting";
import { lookAtSkin, recordWearTrial } from "@/lib/records/record-wear-trial";
import { seeSocketOrder } from "@/lib/records/see-workshop";
import { specifySocket } from "@/lib/records/specify-socket";
import type { Who } from "./accounts";
import { minutesAfter, type When } from "./calendar";
import type { EpisodeOnPaper } from "./episode-on-paper";
import { markOnPaper, marksAtLook } from "./skin";
import { stableId } from "./stable-id";
import type { Timeline } from "./timeline";
import type { AdjustmentStory, BenchWords, FittingStory, LimbMeasured, SocketSpecification } from "./told";
import { type TrialStory, trialEvents, trialTimes, usualIntervalMin } from "./trial-events";

/** What a socket belongs to. */
export interface Owner {
  id: string;
  level: Level;
  prosthetist: "lead" | "junior";
  timeline: Timeline;
  onPaper: EpisodeOnPaper;
  /** Where the thirds of this limb lie. */
  limb: Pick<EpisodeRecord, "stationsFrom" | "limbLengthMm">;
  socket: (when: When, specification: SocketSpecification) => SocketStory;
}

export class SocketStory {
  private constructor(
    private readonly owner: Owner,
    readonly number: number,
    readonly id: string,
    readonly stations: Station[],
    private readonly limb: LimbMeasured,
  ) {}

  static specified(
    owner: Owner,
    number: number,
    when: When,
    { limb, neededDaysAgo, ...given }: SocketSpecification,
  ): SocketStory {
    const { timeline, prosthetist } = owner;
    const id = timeline.newId("socket");
    const {
      stations,
      tighterPercent: _,
      ...specification
    } = "tighterPercent" in given
      ? { ...given, stations: tighter(limb.stations, given.tighterPercent) }
      : { ...given, tighterPercent: undefined };
    const neededOn = neededDaysAgo === undefined ? undefined : timeline.calendar.day(neededDaysAgo);
    timeline.add(when, `socket ${number} specified`, (cast) =>
      specifySocket(cast[prosthetist], {
        ...specification,
        id,
        episodeId: owner.id,
        limbMeasurementId: limb.id,
        stations,
        neededOn,
      }),
    );
    owner.onPaper.sockets.push({
      id,
      number,
      derivedFrom: "derivedFromId" in specification ? specification.derivedFromId : undefined,
      stations,
      limbMeasurementId: limb.id,
      adjustments: ("adjustments" in specification ? specification.adjustments : []).map(numbered(`${id}: adjustment`)),
      state: "planned",
      stateSince: timeline.calendar.instant(when),
      material: specification.material,
    });
    return new SocketStory(owner, number, id, stations, limb);
  }

  /** The next of the series: what the adjustments make of this one, unless `made` says that the bench did otherwise. */
  next(
    when: When,
    {
      limb = this.limb,
      adjustments,
      made = (proposed) => proposed,
      ...bench
    }: BenchWords & { limb?: LimbMeasured; adjustments: AdjustmentStory[]; made?: (proposed: Station[]) => Station[] },
  ): SocketStory {
    const stations = made(proposeDimensions(this.stations, adjustments, this.owner.limb).map(toTenth));
    return this.owner.socket(when, { ...bench, limb, stations, adjustments, derivedFromId: this.id });
  }

  /** Through the workshop. A clinic that makes its own needs no sending. */
  bench({ begun, sent, atHand }: { begun: When; sent?: When; atHand?: When }): this {
    this.moved(begun, "being made", { who: "technician" });
    if (sent) this.moved(sent, "sent", { who: "technician" });
    return atHand ? this.moved(atHand, "at hand") : this;
  }

  moved(
    when: When,
    state: Exclude<SocketState, "fitted" | "released">,
    { who = "assistant", note }: { who?: Who; note?: string } = {},
  ): this {
    const { timeline } = this.owner;
    const at = timeline.calendar.instant(when);
    timeline.add(at, `socket ${this.number} ${state}`, async (cast) => {
      const { version } = await seeSocketOrder(cast[who], this.id);
      await moveSocket(cast[who], { socketId: this.id, version, state, at, note });
    });
    this.owner.onPaper.move(this.id, state, at);
    return this;
  }

  fitted(
    when: When,
    { who = this.owner.prosthetist, place = "clinic", checks = {}, drops, motion, looks, ...said }: FittingStory,
  ): this {
    const { timeline, level, onPaper } = this.owner;
    const at = timeline.calendar.instant(when);
    const id = timeline.newId("fitting");
    const found = {
      id,
      socketId: this.id,
      at,
      place,
      checks: { ...Object.fromEntries(checksOf(level).map((key) => [key, "met"])), ...checks },
      pulls: Object.entries(drops).map(([loadN, displacementMm]) => ({ loadN: Number(loadN), displacementMm })),
      motion: Object.entries(motion).map(([joint, [withoutDeg, withDeg]]) => ({ joint, withoutDeg, withDeg })),
    };
    const look = looks && {
      at: minutesAfter(at, fittingMinutes - 2),
      minutesAfterDoffing: looks.at[0],
      marks: marksAtLook(looks.marks, 0, this.markId),
    };
    timeline.add(minutesAfter(at, fittingMinutes), `socket ${this.number} fitted`, (cast) =>
      recordFitting(cast[who], {
        ...said,
        ...found,
        look: look && { ...look, note: looks.note, noMarks: look.marks.length === 0 },
      }),
    );
    const { comfort, pain } = said;
    const inspections = look ? [{ id: `${id}: look`, ...look, marks: look.marks.map(markOnPaper) }] : [];
    onPaper.fittings.push({ ...found, comfort, pain, inspections });
    onPaper.fit(this.id, at);
    return this;
  }

  worn(when: When, trial: TrialStory): this {
    const { timeline } = this.owner;
    const id = timeline.newId("wear trial");
    const begun = timeline.calendar.instant(when);
    const { over, doffed } = trialTimes(begun, trial);
    const onPaper = this.planned(minutesAfter(begun, -6), id, trial);
    const events = trialEvents(id, begun, trial);
    timeline.add(over, `trial of socket ${this.number}`, ({ assistant }) => recordWearTrial(assistant, { trialId: id, events }));
    onPaper.events.push(...events);
    const { at: minutesAtLook = [], marks = [], note } = trial.looks ?? {};
    if (!doffed) return this;
    minutesAtLook.forEach((minutesAfterDoffing, look) => {
      const at = minutesAfter(doffed, minutesAfterDoffing);
      const seen = { id: stableId(`${id}: look ${look}`), at, minutesAfterDoffing, marks: marksAtLook(marks, look, this.markId) };
      timeline.add(at, `look at the skin after ${minutesAfterDoffing} min`, ({ assistant }) =>
        lookAtSkin(assistant, {
          ...seen,
          trialId: id,
          note: look === 0 ? note : undefined,
          noMarks: seen.marks.length === 0,
        }),
      );
      onPaper.inspections.push({ ...seen, marks: seen.marks.map(markOnPaper) });
    });
    return this;
  }

  /** A trial that nobody has begun yet. */
  trialPlanned(when: When, trial: Omit<TrialStory, "asked">): this {
    const { timeline } = this.owner;
    this.planned(timeline.calendar.instant(when), timeline.newId("wear trial"), trial);
    return this;
  }

  carries(when: When, adjustment: AdjustmentStory): this {
    const { timeline, prosthetist, onPaper } = this.owner;
    onPaper.carried.push({ ...adjustment, id: `${this.id}: carried ${onPaper.carried.length + 1}`, socketId: this.id });
    timeline.add(when, `adjustment carried from socket ${this.number}`, (cast) =>
      carryAdjustment(cast[prosthetist], { ...adjustment, socketId: this.id }),
    );
    return this;
  }

  private planned(
    at: Date,
    id: string,
    { minutes, intervalMin = usualIntervalMin, load, doing, watchedBy, enteredAfterwards }: Omit<TrialStory, "asked">,
  ): EpisodeOnPaper["trials"][number] {
    this.owner.timeline.add(at, `trial of socket ${this.number} planned`, ({ assistant }) =>
      planWearTrial(assistant, {
        id,
        socketId: this.id,
        minutes,
        intervalMin,
        loadKg: load?.kg,
        loadDistanceMm: load?.atMm,
        activities: doing,
        watchedBy,
        enteredAfterwards,
      }),
    );
    const trial = {
      id,
      socketId: this.id,
      plan: { minutes, intervalMin, loadKg: load?.kg, loadDistanceMm: load?.atMm, activities: doing },
      events: [],
      inspections: [],
      enteredAfterwards: enteredAfterwards || undefined,
      plannedAt: at,
    };
    this.owner.onPaper.trials.push(trial);
    return trial;
  }

  /** What an adjustment names when it answers a mark of this socket. */
  answersMark(name: string): string {
    return `mark:${this.markId(name)}`;
  }

  private readonly markId = (name: string): string => stableId(`${this.id}: mark ${name}`);
}

const fittingMinutes = 35;

const numbered = (name: string) => (adjustment: AdjustmentStory, index: number) => ({
  ...adjustment,
  id: `${name} ${index + 1}`,
});

const tighter = (stations: readonly Station[], percent: number): Station[] =>
  stations.map(({ distanceMm, circumferenceMm }) =>
    toTenth({ distanceMm, circumferenceMm: circumferenceMm * (1 - percent / 100) }),
  );

/** As fine as a bench can be asked to make it. */
const toTenth = ({ distanceMm, circumferenceMm }: Station): Station => ({
  distanceMm,
  circumferenceMm: Math.round(circumferenceMm * 10) / 10,
});
