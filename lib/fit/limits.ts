/**
 * Every figure that decides something, in one place: its value, where it comes from, and how far a clinic may set it.
 * Nothing else in this folder holds a limit of its own.
 */
import { FitInputError } from "./errors";
import { type LimitRow, limitTable } from "./limit-table";
import { type SourceId, type SourceKind, sources } from "./sources";
import type { Level } from "./words";

export type LimitId = keyof typeof limitTable;

export interface Limit {
  id: LimitId;
  name: string;
  value: number;
  unit: string;
  /** The range within which a clinic may set it; the value itself where it may not be set. */
  low: number;
  high: number;
  source: SourceId;
  /** Only a `clinic setting` may be changed by an administrator. */
  kind: SourceKind;
  /** The levels that it is for; missing where it is for all. */
  levels?: readonly Level[];
}

export interface Limits {
  /** Names the rule set, and each value that a clinic has set otherwise. */
  version: string;
  list: readonly Limit[];
}

const rulesVersion = "fit-rules/1";

const rows: Readonly<Record<LimitId, LimitRow>> = limitTable;

/** The limits as published, as commonly practised, and as proposed where a clinic has to choose. */
export const defaultLimits: Limits = {
  version: rulesVersion,
  list: Object.entries(rows).map(([id, { settable, ...limit }]) => ({
    ...limit,
    id: id as LimitId, // Object.entries forgets the type of the keys
    kind: sources[limit.source].kind,
    low: settable?.[0] ?? limit.value,
    high: settable?.[1] ?? limit.value,
  })),
};

export const limitById = (limits: Limits, id: string): Limit | undefined => indexOf(limits).get(id);

/** An assessment asks for a limit a hundred times: each set of limits is put into an index when first asked, and then kept. */
const indices = new WeakMap<Limits, ReadonlyMap<string, Limit>>();

function indexOf(limits: Limits): ReadonlyMap<string, Limit> {
  const kept = indices.get(limits);
  if (kept) return kept;
  // From the last to the first, so that of two with one id the first holds.
  const index = new Map(limits.list.toReversed().map((limit) => [limit.id as string, limit])); // asked for by any text
  indices.set(limits, index);
  return index;
}

/**
 * The value of a limit.
 *
 * @throws FitInputError where the set of limits lacks it
 *
 * @example
 * limitValue(defaultLimits, "worn-minutes-least")
 * // => 20
 */
export function limitValue(limits: Limits, id: LimitId): number {
  const limit = limitById(limits, id);
  if (!limit || !Number.isFinite(limit.value)) throw new FitInputError(`limits.${id}`, "expected a limit with a value");
  return limit.value;
}

/**
 * Lays a clinic's own values over the limits.
 *
 * @param own values by the id of the limit, in its unit
 * @throws FitInputError where there is no such limit, it is not a clinic setting, or the value is out of its range
 *
 * @example
 * limitsWith({ "fresh-days": 21 }).version
 * // => "fit-rules/1; fresh-days 21"
 */
export function limitsWith(own: Readonly<Record<string, number>>, limits: Limits = defaultLimits): Limits {
  for (const [id, value] of Object.entries(own)) checkSetting(limits, id, value);
  const list = limits.list.map((limit) => ({ ...limit, value: own[limit.id] ?? limit.value }));
  checkOrder(list);
  const changed = list.filter(({ id, value }) => value !== limitTable[id].value).map(({ id, value }) => `${id} ${value}`);
  return { version: [rulesVersion, ...changed].join("; "), list };
}

function checkSetting(limits: Limits, id: string, value: number): void {
  const limit = limitById(limits, id);
  if (!limit) throw new FitInputError(`limits.${id}`, "there is no such limit");
  if (limit.kind !== "clinic setting")
    throw new FitInputError(`limits.${id}`, `this limit is ${limit.kind}; a clinic does not set it`);
  // Written so that NaN is refused.
  if (!(value >= limit.low && value <= limit.high))
    throw new FitInputError(`limits.${id}`, `expected ${limit.low} to ${limit.high} ${limit.unit}`);
}

/** Pairs of which the first may never pass the second, however each is set. */
const ordered: readonly (readonly [LimitId, LimitId])[] = [
  ["comfort-never-below", "comfort-last-least"],
  ["index-comfort-zero", "index-comfort-one"],
  ["index-fade-one", "index-fade-zero"],
  ["index-evenness-zero", "index-evenness-one"],
];

function checkOrder(list: readonly Limit[]): void {
  const value = (id: LimitId) => list.find((limit) => limit.id === id)?.value ?? 0;
  for (const [lower, upper] of ordered)
    if (value(lower) > value(upper)) throw new FitInputError(`limits.${lower}`, `expected at most the value of ${upper}`);
}
