/** The gate about the motion that a socket leaves, at its edges, and what it says. */
import { describe, expect, it } from "vitest";
import type { Bundle } from "@/lib/fit";
import { changed, fittingOf, gateOf } from "./ready-bundle";

type Change = (bundle: Bundle) => void;

const gateAfter = (id: Parameters<typeof gateOf>[1], ...changes: readonly Change[]) =>
  gateOf(
    changed((bundle) => {
      for (const change of changes) change(bundle);
    }),
    id,
  );

// Elbow flexion ≤ 10° lost, self-suspended transradial ≥ 105° kept: Transradial Body-Powered Standards, UW open text. Other joints ≤ 15°: clinic setting.
describe("motion", () => {
  const measured =
    (...joints: readonly (readonly [joint: string, withoutDeg: number, withDeg: number])[]): Change =>
    (bundle) => {
      fittingOf(bundle).motion = joints.map(([joint, withoutDeg, withDeg]) => ({ joint, withoutDeg, withDeg }));
    };
  const gate = (...changes: readonly Change[]) => gateAfter("motion", ...changes);

  it("says which joint was not measured, against its own limit", () => {
    const elbow = { state: "unknown", unit: "°", limit: 105, source: "body-powered-standards" };
    expect(gate(measured())).toMatchObject({ ...elbow, why: expect.stringMatching(/^elbow flexion was not measured/) });
    expect(gate(measured(["forearm-rotation", 150, 149]))).toMatchObject(elbow);
    const level =
      (name: Bundle["episode"]["level"]): Change =>
      (bundle) => {
        bundle.episode.level = name;
        for (const fitting of bundle.fittings) fitting.checks = {};
      };
    expect(gate(level("transtibial"), measured())).toMatchObject({
      state: "unknown",
      limit: 15,
      why: expect.stringMatching(/^knee flexion/),
    });
    const shoulder = gate(level("transhumeral"), measured());
    expect(shoulder).toMatchObject({
      state: "unknown",
      limit: 15,
      source: "clinic-setting",
      why: expect.stringMatching(/^The joint above/),
    });
    expect(gate(level("transhumeral"), measured(["shoulder-flexion", 150, 145])).state).toBe("met");
  });

  it("judges by the worst joint, and reads out all", () => {
    const found = gate(measured(["elbow-flexion", 138, 131], ["forearm-rotation", 150, 120]));
    expect(found).toMatchObject({ state: "not met", value: 30, limit: 15 });
    expect(found.why).toMatch(/^elbow flexion: 131°.* forearm rotation: 120° .* 30° lost/);
  });

  it("takes a joint that fails for worse than one that is close, and that for worse than any that is met", () => {
    // Of 105° kept the elbow keeps 131° (met) or 106° (close: within 1.645 · 3°); of 15° the rotation may lose 14° (close), 16° (not met) or 0°.
    const value = (elbow: number, rotation: number) =>
      gate(measured(["elbow-flexion", 180, elbow], ["forearm-rotation", 150, 150 - rotation]));
    expect(value(106, 16)).toMatchObject({ state: "not met", value: 16 });
    expect(value(131, 14)).toMatchObject({ state: "close", value: 14 });
    expect(value(106, 0)).toMatchObject({ state: "close", value: 106 });
    // Of two that are close, the one that lost more.
    expect(value(106, 14)).toMatchObject({ state: "close", value: 106 });
    expect(value(131, 0)).toMatchObject({ state: "met", value: 131 });
  });

  it("is not met by a joint that fails, though the elbow was not measured", () => {
    expect(gate(measured(["forearm-rotation", 150, 120]))).toMatchObject({ state: "not met", value: 30 });
    expect(gate(measured(["forearm-rotation", 150, 136])).state).toBe("unknown");
  });
});
