import { describe, expect, it } from "vitest";
import { placesOverSockets, type SkinFindings, type SkinMark } from "@/lib/fit";
import { mark } from "./marks";
import { readyBundle } from "./ready-bundle";

const skin = (...marks: SkinMark[]): SkinFindings => ({
  lookedAtMin: 1,
  cells: [],
  marks,
  hardestGrade: 0,
  evennessAround: 1,
  longestFade: { lowMin: 0, highMin: null },
});
const at = (id: string, angleDeg: number, changed: Partial<SkinMark> = {}) => mark({ id, angleDeg, ...changed });
const seen = (...skins: (SkinFindings | undefined)[]) =>
  placesOverSockets(readyBundle(), skins).map(({ name, sockets }) => [
    name,
    ...sockets.map((cell) => cell && `${cell.grade} ${cell.fate ?? "-"} ${cell.mark?.id ?? "-"}`),
  ]);

describe("marked places over sockets", () => {
  it("keep their names whatever the marks are called with each socket", () => {
    expect(seen(skin(at("m1", 0, { firm: true }), at("m2", 90)), skin(at("m1", 92), at("m2", 3)), skin(at("m1", 180)))).toEqual([
      ["A", "3 - m1", "2 fainter m2", "0 gone -"],
      ["B", "2 - m2", "2 same m1", "0 gone -"],
      ["C", "0 - -", "0 - -", "2 new m1"],
    ]);
  });

  it("are the same place when a mark comes back there", () => {
    expect(seen(skin(at("a", 0)), skin(), skin(at("b", 2, { strength: "deep" })))).toEqual([
      ["A", "2 - a", "0 gone -", "3 new b"],
    ]);
  });

  it("are not known where nobody looked, and go by the look before that", () => {
    expect(seen(skin(at("a", 0)), undefined, skin(at("b", 2, { strength: "deep" })))).toEqual([
      ["A", "2 - a", undefined, "3 harder b"],
    ]);
    expect(seen(undefined, undefined)).toEqual([]);
  });

  it("have names beyond the alphabet", () => {
    const many = Array.from({ length: 28 }, (_, index) => at(`m${index}`, index * 12, { widthMm: 3, heightMm: 3 }));
    expect(seen(skin(...many)).map(([name]) => name)).toEqual(expect.arrayContaining(["A", "Z", "AA", "AB"]));
  });
});
