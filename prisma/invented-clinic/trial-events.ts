/** What happened in a wear trial, told by minutes from its begin. */
import type { Aspect, FeelingKind, StopSign, Third } from "@/lib/fit";
import { minutesAfter } from "./calendar";
import type { LooksStory } from "./skin";
import { stableId } from "./stable-id";

/** What was felt, and where: "rubbing lateral proximal". */
type Felt = FeelingKind | `${FeelingKind} ${Aspect} ${Third}`;

/** The check-ins in columns, one answer of each a check-in. */
export interface Asked {
  /** The minutes; every five where left out. */
  at?: readonly number[];
  comfort: readonly number[];
  pain: readonly number[];
  exertion: readonly number[];
  /** By minute. */
  felt?: Record<number, Felt[]>;
}

export interface TrialStory {
  minutes: number;
  intervalMin?: number;
  /** Upper limb: what stands for the device, and how far from the joint it sits. */
  load?: { kg: number; atMm?: number };
  doing: readonly string[];
  watchedBy?: string;
  asked: Asked;
  pauses?: readonly (readonly [from: number, to: number])[];
  stop?: { minute: number; sign: StopSign; note: string };
  /** The minute of its end; half a minute after the last check-in where left out, null while it runs. */
  endedAt?: number | null;
  reportedBy?: "wearer" | "carer" | "clinician";
  /** Recorded from paper or a message, with its true times. */
  enteredAfterwards?: boolean;
  looks?: LooksStory;
}

/** The same answers all through, as a calm trial has them. */
export function steady(untilMinute: number, [comfort, pain, exertion]: readonly [number, number, number]): Asked {
  const all = (answer: number) => Array.from({ length: untilMinute / usualIntervalMin }, () => answer);
  return { comfort: all(comfort), pain: all(pain), exertion: all(exertion) };
}

export const usualIntervalMin = 5;

export interface TrialTimes {
  begun: Date;
  /** When the last of it had happened. */
  over: Date;
  doffed: Date | undefined;
}

/** When a trial begun at this time was over, and when the socket came off. */
export function trialTimes(begun: Date, trial: TrialStory): TrialTimes {
  if (trial.endedAt === null) return { begun, over: minutesAfter(begun, lastMinuteOf(trial)), doffed: undefined };
  const doffed = minutesAfter(begun, lastMinuteOf(trial) + 0.5);
  return { begun, over: doffed, doffed };
}

export function trialEvents(trialId: string, begun: Date, trial: TrialStory) {
  const { asked, pauses = [], stop, endedAt, reportedBy = "wearer" } = trial;
  const after = (minute: number) => minutesAfter(begun, minute);
  const runs = endedAt === null;
  const events = [
    { kind: "begun", at: begun },
    ...minutesOf(asked).map((minute, index) => ({
      kind: "check-in",
      at: after(minute),
      comfort: asked.comfort[index],
      pain: asked.pain[index],
      exertion: asked.exertion[index],
      feelings: (asked.felt?.[minute] ?? []).map(feeling),
      reportedBy,
    })),
    ...pauses.flatMap(([from, to]) => [
      { kind: "paused", at: after(from) },
      { kind: "resumed", at: after(to) },
    ]),
    ...(stop ? [{ kind: "stop-sign", at: after(stop.minute), sign: stop.sign, note: stop.note }] : []),
    ...(runs || stop ? [] : [{ kind: "ended", at: after(lastMinuteOf(trial)) }]),
    ...(runs ? [] : [{ kind: "doffed", at: after(lastMinuteOf(trial) + 0.5) }]),
  ];
  return events.map((event, index) => ({ ...event, id: stableId(`${trialId}: event ${index}`) }));
}

function lastMinuteOf({ asked, endedAt, stop }: TrialStory): number {
  const lastAsked = minutesOf(asked).at(-1) ?? 0;
  if (endedAt === null) return lastAsked;
  return endedAt ?? stop?.minute ?? lastAsked + 0.5;
}

const minutesOf = ({ at, comfort }: Asked): readonly number[] => at ?? comfort.map((_, index) => (index + 1) * usualIntervalMin);

function feeling(felt: Felt) {
  const [kind, aspect, third] = felt.split(" ");
  return { kind, aspect, third };
}
