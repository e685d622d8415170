import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { HereBefore } from "@/app/_parts/here-before";
import { hereBeforeWords } from "@/app/_parts/here-before-words";
import { type AdjustmentKind, type Effect, recordOfKind } from "@/lib/fit";
import type { KindHistory } from "@/lib/records/see-adjustment-history";

interface Told {
  worked?: number;
  same?: number;
  worse?: number;
  not?: number;
  together?: number;
  elsewhere?: number;
  limb?: "changed" | "not known" | "no detectable change";
}

/** The first of the judged were made together with others. */
function historyOf(
  kind: AdjustmentKind,
  { worked = 0, same = 0, worse = 0, not = 0, together = 0, elsewhere = 0, limb }: Told,
): KindHistory {
  const effects: Effect[] = [
    ...Array.from({ length: worked }, () => "worked" as const),
    ...Array.from({ length: same }, () => "no detectable change" as const),
    ...Array.from({ length: worse }, () => "worse" as const),
    ...Array.from({ length: not }, () => "not measured" as const),
  ];
  const record = recordOfKind(
    effects.map((effect, index) => ({
      ...{
        adjustmentId: String(index),
        effect,
        together: index < together,
        elsewhere: index < elsewhere,
        limb: limb ?? "no detectable change",
      },
    })),
  );
  return record.withheld === null ? { kind, ...record, episodes: 3 } : { kind, ...record };
}

const plain = (words: string) => words.replaceAll("\u00a0", " ");
const history = [
  historyOf("relief", { worked: 6, same: 1, worse: 1, not: 2, together: 3 }),
  historyOf("build-up", { worked: 2, worse: 1 }),
  historyOf("trim", { worked: 5, limb: "not known" }),
  historyOf("flare", { not: 9 }),
];

describe("what a kind has done, in words", () => {
  test("counts, both intervals, and what was not measured", () => {
    const [relief] = hereBeforeWords(history, ["relief"]).statements;
    expect(plain(relief?.outcomes ?? "")).toBe(
      "worked 6 of 8 (75 %, between 41 and 93 %), no detectable change 1, worse 1 (13 %, between 2 and 47 %); 2 more were not measured.",
    );
    expect(relief?.from).toBe(
      "The 8 that were judged are from 3 episodes. Of these: 3 made together with others, cannot be told apart.",
    );
  });

  test("a mark that came elsewhere is said with the outcomes", () => {
    const { statements } = hereBeforeWords([historyOf("relief", { worked: 5, not: 2, elsewhere: 2 })]);
    expect(plain(statements[0]?.outcomes ?? "")).toMatch(
      /; 2 more were not measured\. After 2 of all 7 a mark was much harder at a place that it was not made for\.$/,
    );
  });

  test("none of five is not never, and nothing is said of what is not there", () => {
    const [trim] = hereBeforeWords(history, ["trim"]).statements;
    expect(plain(trim?.outcomes ?? "")).toBe(
      "worked 5 of 5 (100 %, between 57 and 100 %), no detectable change 0, worse 0 (0 %, between 0 and 43 %).",
    );
    expect(trim?.from).toBe("The 5 that were judged are from 3 episodes. Of these: 5 without knowing if the limb changed.");
  });

  test("below five judged no count is shown, of several kinds in one sentence", () => {
    expect(hereBeforeWords(history, ["build-up"])).toEqual({
      statements: [],
      withheld: "Build-up: fewer than five judged here, so no count is shown.",
    });
    expect(hereBeforeWords(history).withheld).toBe("Build-up and flare: fewer than five judged here, so no count is shown.");
  });

  test("each kind once, in the order in which it was asked for", () => {
    const { statements } = hereBeforeWords(history, ["trim", "relief", "trim"]);
    expect(statements.map(({ kind }) => kind)).toEqual(["trim", "relief"]);
  });
});

describe("the part", () => {
  const shown = (kinds?: readonly AdjustmentKind[]) =>
    plain(renderToStaticMarkup(createElement(HereBefore, { history, ...(kinds ? { kinds } : {}) })));

  test("is folded, names each kind, and says what a count is not", () => {
    expect(shown()).toMatch(/^<details class="[^"]*"><summary>What these kinds of adjustment have done here before<\/summary>/);
    expect(shown()).toContain("<strong>Relief:</strong> worked 6 of 8");
    expect(shown(["build-up"])).toContain("A count of one clinic is no proof of a cause: a prosthetist decides.");
  });

  test("of what is withheld it shows no number, and of no kinds nothing", () => {
    expect(shown(["build-up", "flare"])).not.toMatch(/>[^<]*\d/);
    expect(shown([])).toBe("");
  });
});
