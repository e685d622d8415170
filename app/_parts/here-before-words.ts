/** What a kind of adjustment has done in this clinic, in words. */
import type { AdjustmentKind } from "@/lib/fit";
import type { KindHistory } from "@/lib/records/see-adjustment-history";
import { counted } from "./numbers";

const space = "\u00a0";

type Shown = Extract<KindHistory, { withheld: null }>;
type Share = Shown["worked"];

export interface KindStatement {
  kind: AdjustmentKind;
  /** "worked 6 of 8 (75 %, between 41 and 93 %), …" */
  outcomes: string;
  /** What it was counted from. */
  from: string;
}

export interface HereBeforeWords {
  /** In the order in which they were asked for. */
  statements: KindStatement[];
  /** One sentence for all kinds of which too few were judged; undefined where there is none. */
  withheld: string | undefined;
}

/** Of the kinds asked for, each once; without a list, of all. */
export function hereBeforeWords(history: readonly KindHistory[], kinds?: readonly AdjustmentKind[]): HereBeforeWords {
  const asked = [...new Set(kinds ?? history.map(({ kind }) => kind))].flatMap((kind) =>
    history.filter((one) => one.kind === kind),
  );
  const tooFew = asked.filter(({ withheld }) => withheld !== null).map(({ kind }) => kind);
  return {
    statements: asked.flatMap((one) => (one.withheld === null ? [statementOf(one)] : [])),
    withheld: tooFew.length === 0 ? undefined : `${capital(listed(tooFew))}: fewer than five judged here, so no count is shown.`,
  };
}

function statementOf(one: Shown): KindStatement {
  const { kind, judged, worked, worse, noDetectableChange, notMeasured, elsewhere } = one;
  const beside = notMeasured === 0 ? "." : `; ${notMeasured} more ${notMeasured === 1 ? "was" : "were"} not measured.`;
  const harm =
    elsewhere === 0
      ? ""
      : ` After ${elsewhere} of all ${judged + notMeasured} a mark was much harder at a place that it was not made for.`;
  return {
    kind,
    outcomes: `worked ${worked.count} of ${judged} ${inPercent(worked)}, no detectable change ${noDetectableChange}, worse ${worse.count} ${inPercent(worse)}${beside}${harm}`,
    from: fromWords(one),
  };
}

/** What makes a count less sure stands with it. */
function fromWords({ judged, together, limbChanged, limbNotKnown, episodes }: Shown): string {
  const parts = [
    together > 0 && `${together} made together with others, cannot be told apart`,
    limbChanged > 0 && `${limbChanged} while the limb changed detectably`,
    limbNotKnown > 0 && `${limbNotKnown} without knowing if the limb changed`,
  ].filter((part) => part !== false);
  const doubts = parts.length === 0 ? "" : ` Of these: ${parts.join("; ")}.`;
  return `The ${judged} that were judged are from ${counted(episodes, "episode")}.${doubts}`;
}

const percent = (share: number): string => String(Math.round(share * 100));

const inPercent = ({ share, low, high }: Share): string =>
  `(${percent(share)}${space}%, between ${percent(low)} and ${percent(high)}${space}%)`;

const listed = (words: readonly string[]): string =>
  words.length < 2 ? words.join("") : `${words.slice(0, -1).join(", ")} and ${words.at(-1)}`;

export const capital = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
