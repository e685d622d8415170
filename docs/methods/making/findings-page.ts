/** Every row of what practitioners consider, on one page: what forbids first, then by limb. */
import { considerations } from "../../../lib/fit";
import type { Consideration } from "../../../lib/fit/consider-row";
import { citation } from "./offered-to-pages";
import { writtenByCode } from "./written-by-code";

const limbs: Readonly<Record<Consideration["limb"], string>> = {
  any: "Any limb",
  upper: "Upper limb",
  lower: "Lower limb",
};

export function findingsPage(): string {
  const forbidding = considerations.filter(({ forbids }) => forbids);
  const others = (limb: Consideration["limb"]) => considerations.filter((row) => row.limb === limb && !row.forbids);
  return `${[
    writtenByCode("lib/fit/consider*.ts"),
    "# Findings, and what practitioners consider",
    `From what was found to what is commonly considered. **It suggests and never orders.** Each of the ${considerations.length} rows is common practice without a source: a prosthetist reads it and decides. What forbids has no adjustment at all. How a row is found: [Comparing sockets](comparing-sockets.md).`,
    citation("common-practice"),
    section("Stop first", forbidding),
    ...(["any", "upper", "lower"] as const).map((limb) => section(limbs[limb], others(limb))),
  ].join("\n\n")}\n`;
}

const section = (heading: string, rows: readonly Consideration[]): string => [`## ${heading}`, ...rows.map(entry)].join("\n\n");

function entry(row: Consideration): string {
  const { id, finding, forbids, adjustments, weigh, cautions, stopWhen } = row;
  const stop = `**${stopWhen}**`;
  const considered = adjustments.map(({ kind, what }) => `- *${kind}*: ${what}`);
  return [
    `### ${finding}`,
    `\`${id}\`: ${whereOf(row)}.`,
    ...(forbids ? [stop, "No adjustment is offered."] : []),
    ...(considered.length > 0 ? [`Considered:\n\n${considered.join("\n")}`] : []),
    ...(weigh.length > 0 ? [`Weighed:\n\n${weigh.map((line) => `- ${line}`).join("\n")}`] : []),
    ...(cautions.length > 0 ? [`Cautions:\n\n${cautions.map((line) => `- ${line}`).join("\n")}`] : []),
    ...(forbids ? [] : [stop]),
  ].join("\n\n");
}

const whereOf = ({ kind, alsoFor = [], limb, levels, place }: Consideration): string =>
  [
    [kind, ...alsoFor].map((finding) => `*${finding.replaceAll("-", " ")}*`).join(", "),
    limbs[limb].toLowerCase(),
    ...(levels ? [levels.join(", ")] : []),
    ...(place ? [`at the ${place}`] : []),
  ].join("; ");
