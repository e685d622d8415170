import { createElement } from "react";
import { renderToStaticMarkup } from "react-dom/server";
import { describe, expect, test } from "vitest";
import { GateList } from "@/app/_parts/gate-list";
import { gateWords } from "@/app/_parts/gate-words";
import type { Gate } from "@/lib/fit/assessment";
import type { ReadingState } from "@/lib/fit/reading";
import { type GateId, gateIds, toldNotSeen } from "@/lib/fit/words";

const found: Partial<Record<GateId, ReadingState>> = {
  comfort: "close",
  "skin-inspected": "unknown",
  motion: "not met",
  "skin-intact": "forbids",
};
const gates = gateIds.map(
  (id): Gate => ({
    id,
    state: found[id] ?? "met",
    why: `Why of ${id}.`,
    source: "tape-error",
    ...(id === "motion" ? { value: 18, standardError: 4.24, unit: "deg", limitText: "at most 15°" } : {}),
  }),
);
const show = (shown: readonly Gate[]) =>
  renderToStaticMarkup(
    createElement(GateList, { gates: shown, kinds: { "tape-error": "clinic setting" }, timeZone: "Europe/Lisbon" }),
  ).replaceAll("\u00a0", " ");

describe("the list of gates", () => {
  test("stands worst first, whatever their order, and folds only what is met", () => {
    const [open = "", folded = ""] = show(gates).split("<details");
    const at = (id: GateId) => open.indexOf(gateWords[id]);
    expect([at("skin-intact"), at("motion"), at("skin-inspected"), at("comfort")].every((place) => place > 0)).toBe(true);
    expect(at("skin-intact")).toBeLessThan(at("motion"));
    expect(at("motion")).toBeLessThan(at("skin-inspected"));
    expect(at("skin-inspected")).toBeLessThan(at("comfort"));
    expect(folded).toContain("16 met");
    expect(folded).not.toContain("forbids");
  });

  test("what was told and not seen says so also where it is folded", () => {
    const told = gates.map((gate) => (gate.id === "suspension" ? { ...gate, why: `${gate.why} ${toldNotSeen}` } : gate));
    const summary = (list: string) => list.split("<summary")[1]?.split("</summary>")[0] ?? "";
    expect(summary(show(told))).toContain(`${gateWords.suspension.toLowerCase()} (told, not seen)`);
    expect(summary(show(told)).match(/told, not seen/g)).toHaveLength(1);
    expect(summary(show(gates))).not.toContain("told, not seen");
  });

  test("each shows the value with its error, the limit, why, and the way to where the limit comes from", () => {
    const list = show(gates);
    expect(list).toContain("18 ± 4°");
    expect(list).toContain("at most 15°");
    expect(list).toContain("Why of motion.");
    expect(list).toContain('href="/rules#tape-error"');
    expect(list).toContain("clinic setting");
  });

  test("an accepted gate keeps its state and says who accepted it, when and why", () => {
    const accepted = { by: "Inês Duarte", at: "2026-10-06T10:00:00Z", why: "the link dropped" };
    const list = show(gates.map((gate) => (gate.id === "motion" ? { ...gate, accepted } : gate)));
    expect(list).toContain("accepted by Inês Duarte on 6 October 2026: the link dropped");
    expect(list).toContain("not met");
  });

  test("every gate has words of its own", () => {
    expect(new Set(gateIds.map((id) => gateWords[id])).size).toBe(20);
  });
});
