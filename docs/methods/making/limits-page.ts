/** Every limit on one page. */
import { defaultLimits } from "../../../lib/fit";
import { tableOf } from "./as-written";
import { citation, rangeOf, settingOf } from "./offered-to-pages";
import { writtenByCode } from "./written-by-code";

export const limitsPage = (): string => `${writtenByCode("lib/fit/limit-table.ts")}

# Limits

Every figure that decides something: its value, whether a clinic may set it and how far, and where it comes from. Rule set \`${defaultLimits.version}\`. A limit that is no clinic setting is changed in the code, with its source, and not by a clinic.

*Published* does not mean validated for this tool. *From memory* names a work whose figure was not at hand to check. *Common practice* has no source at all. [Sources](sources.md) lists them the other way round.

${tableOf(
  ["limit", "id", "value", "a clinic may set", "levels", "source"],
  defaultLimits.list.map((limit) => [
    limit.name,
    `\`${limit.id}\``,
    settingOf(limit),
    rangeOf(limit),
    limit.levels?.join(", ") ?? "all",
    citation(limit.source),
  ]),
)}
`;
