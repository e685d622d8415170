/** One number for how good a fit is, to compare sockets with. It decides nothing: gates do. */
import type { FitIndex } from "./assessment";
import { type DesirableRange, desirability } from "./desirability";
import { kragten } from "./kragten";
import { defaultLimits, type Limits, limitValue } from "./limits";
import { geometricMean } from "./statistics/geometric-mean";

export interface IndexComponent extends DesirableRange {
  id: string;
  /** As a person reads it: "highest pain". */
  name: string;
  /** Missing where it was not measured. */
  value?: number;
  unit: string;
  standardError: number;
}

/** A value with its standard error; missing where it was not measured. */
interface Measured {
  value: number;
  standardError: number;
}

export interface IndexMeasures {
  /** The last comfort of the trial, 0–10. */
  comfort?: number | undefined;
  /** The highest pain of the trial, 0–10. */
  pain?: number | undefined;
  /** Displacement in mm at the load of the rule, with the rule's limit. */
  displacement?: (Measured & { limitMm: number }) | undefined;
  /** The longest fade of a mark in minutes: the upper end of its interval. */
  fadeMin?: number | undefined;
  /** The greatest loss of motion of a joint, in degrees. */
  motionLostDeg?: number | undefined;
  /** Pielou's J around the limb, at the look at doffing; 1 without marks. */
  evennessAround?: number | undefined;
}

/** The six components of the index: the ends of their desirabilities and their errors are limits, displacement's its rule's. */
export function indexComponents(measures: IndexMeasures, limits: Limits = defaultLimits): IndexComponent[] {
  const { comfort, pain, displacement, fadeMin, motionLostDeg, evennessAround } = measures;
  return [
    measuredAs(comfort, {
      id: "comfort",
      name: "comfort",
      unit: "of 10",
      standardError: limitValue(limits, "comfort-error"),
      zeroAt: limitValue(limits, "index-comfort-zero"),
      oneAt: limitValue(limits, "index-comfort-one"),
    }),
    measuredAs(pain, {
      id: "pain",
      name: "highest pain",
      unit: "of 10",
      standardError: limitValue(limits, "pain-error"),
      zeroAt: limitValue(limits, "index-pain-zero"),
      oneAt: 0,
    }),
    measuredAs(displacement?.value, {
      id: "displacement",
      name: "displacement under load",
      unit: "mm",
      standardError: displacement?.standardError ?? 0,
      zeroAt: displacement?.limitMm ?? 1,
      oneAt: 0,
    }),
    measuredAs(fadeMin, {
      id: "fade",
      name: "longest fading of a mark",
      unit: "min",
      standardError: limitValue(limits, "fade-error-minutes"),
      zeroAt: limitValue(limits, "index-fade-zero"),
      oneAt: limitValue(limits, "index-fade-one"),
    }),
    measuredAs(motionLostDeg, {
      id: "motion",
      name: "greatest loss of motion",
      unit: "°",
      // A loss is the difference of two angles.
      standardError: limitValue(limits, "goniometer-error-deg") * Math.SQRT2,
      zeroAt: limitValue(limits, "index-motion-zero"),
      oneAt: 0,
    }),
    measuredAs(evennessAround, {
      id: "evenness",
      name: "evenness of marks around",
      unit: "of 1",
      standardError: 0,
      zeroAt: limitValue(limits, "index-evenness-zero"),
      oneAt: limitValue(limits, "index-evenness-one"),
    }),
  ];
}

const measuredAs = (value: number | undefined, component: IndexComponent): IndexComponent =>
  value === undefined ? component : { value, ...component };

/**
 * Geometric mean of the components' desirabilities, with a 90 % interval by Kragten's propagation of their standard
 * errors, within 0…1. Any desirability of zero makes it zero. A component that was not measured leaves the index
 * without a value, and is named.
 *
 * @param components any number of them; none leaves the index without a value
 * @throws FitInputError where a number is not finite, a standard error negative, or both ends of a range the same
 * @source derringer-suich-1980
 *
 * @example
 * fitIndex([{ id: "comfort", name: "comfort", unit: "of 10", value: 7, standardError: 1, zeroAt: 4, oneAt: 9 }])
 * // => { value: 0.6, low90: 0.271, high90: 0.929 }
 */
export function fitIndex(components: readonly IndexComponent[]): FitIndex {
  const judged = components.map((component) => {
    const { id, name, unit, standardError, value } = component;
    return value === undefined
      ? { id, name, unit, standardError }
      : { id, name, unit, standardError, value, desirability: desirability(value, component) };
  });
  const missing = components.filter(({ value }) => value === undefined).map(({ name }) => name);
  const source = "derringer-suich-1980";
  if (components.length === 0) return { missing, components: judged, source, why: "Nothing to make an index of." };
  if (missing.length > 0) return { missing, components: judged, source, why: `No index: not measured: ${missing.join(", ")}.` };
  const inputs = components.map(({ value = 0, standardError }) => ({ value, standardError }));
  const { value, low90, high90 } = kragten(inputs, (values) =>
    geometricMean(components.map((range, index) => desirability(values[index] ?? 0, range))),
  );
  const [low, high] = [Math.max(0, low90), Math.min(1, high90)];
  return {
    missing,
    components: judged,
    source,
    value,
    low90: low,
    high90: high,
    why: `Geometric mean of ${components.length} desirabilities ${value.toFixed(2)}, 90 % interval ${low.toFixed(2)} to ${high.toFixed(2)}. It compares sockets and decides nothing.`,
  };
}
