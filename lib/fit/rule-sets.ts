/** The limits of an earlier day, so that an assessment of then is explained by what it was made with. */
import { FitInputError } from "./errors";
import { defaultLimits, type LimitId, type Limits, limitById } from "./limits";

/**
 * Every rule set that an assessment may name, with what it had otherwise than the limits of today. Whoever changes the
 * value of a limit gives the rules a new version, and writes the value that it had here, under the old one.
 */
const ruleSets: Readonly<Record<string, Partial<Record<LimitId, number>>>> = {
  "fit-rules/1": {},
};

/**
 * The limits that an assessment was made with, from the `rulesVersion` in it: the rule set of its day, with the
 * clinic's own settings of that day laid over it. Those stand as they were, also where they are out of today's range.
 *
 * @throws FitInputError where the version names a rule set or a limit that there never was, or a value that is none
 *
 * @example
 * limitValue(limitsOfVersion("fit-rules/1; fresh-days 21"), "fresh-days")
 * // => 21
 */
export function limitsOfVersion(version: string): Limits {
  const [rules = ""] = version.split("; ");
  const then = Object.hasOwn(ruleSets, rules) ? ruleSets[rules] : undefined;
  if (!then) throw new FitInputError("rulesVersion", `there are no rules ${rules}`);
  const own = settingsInVersion(version);
  return {
    version,
    list: defaultLimits.list.map((limit) => ({ ...limit, value: own[limit.id] ?? then[limit.id] ?? limit.value })),
  };
}

/**
 * The clinic's own values that a version names, by the id of the limit.
 *
 * @throws FitInputError where it names a limit that there never was, or a value that is none
 *
 * @example
 * settingsInVersion("fit-rules/1; fresh-days 21")
 * // => { "fresh-days": 21 }
 */
export const settingsInVersion = (version: string): Partial<Record<LimitId, number>> =>
  Object.fromEntries(version.split("; ").slice(1).map(settingOf));

function settingOf(setting: string): [LimitId, number] {
  const [id = "", written = "", ...more] = setting.split(" ");
  const limit = limitById(defaultLimits, id);
  const value = written === "" ? Number.NaN : Number(written);
  if (!limit || more.length > 0 || !Number.isFinite(value))
    throw new FitInputError("rulesVersion", `expected the id of a limit and its value, not “${setting}”`);
  return [limit.id, value];
}
