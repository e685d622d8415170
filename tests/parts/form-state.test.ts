import { describe, expect, test } from "vitest";
import { begunAnew, inputOf, refusedState, valuesOf } from "@/app/_parts/form-state";
import { ChangedMeanwhile, InputRefused } from "@/lib/records/refusals";

const typed = {
  name: "Tomas",
  "stations.0.id": "m1",
  "stations.0.distanceMm": "0",
  "stations.0.circumferenceMm": "180",
  "stations.1.id": "m2",
  "stations.1.distanceMm": "",
  "stations.1.circumferenceMm": " ",
  "stations.7.distanceMm": "40",
  "stations.7.circumferenceMm": "",
  "look.marks.2.angleDeg": "90",
};

describe("from the fields of a form to the input of a command", () => {
  test("rows keep their order, and a row that was left free or emptied is left out though its id travels along", () => {
    expect(inputOf(typed).input).toEqual({
      name: "Tomas",
      stations: [
        { id: "m1", distanceMm: "0", circumferenceMm: "180" },
        { distanceMm: "40", circumferenceMm: "" },
      ],
      look: { marks: [{ angleDeg: "90" }] },
    });
  });

  test("an error finds the field where it was typed, whatever rows were left out before it", () => {
    const { nameOf } = inputOf(typed);
    expect(nameOf("stations.1.circumferenceMm")).toBe("stations.7.circumferenceMm");
    expect(nameOf("look.marks.0.strength")).toBe("look.marks.2.strength");
    expect(nameOf("stations")).toBe("stations");
    expect(nameOf("neverSent")).toBe("neverSent");
  });

  test("ten rows stay in the order of their numbers", () => {
    const values = Object.fromEntries(Array.from({ length: 11 }, (_, row) => [`pulls.${10 - row}.loadN`, String(10 - row)]));
    expect(inputOf(values).input.pulls).toEqual(Array.from({ length: 11 }, (_, row) => ({ loadN: String(row) })));
  });

  test("what was typed comes back, without the fields that React adds", () => {
    const formData = new FormData();
    formData.append("$ACTION_REF_1", "");
    formData.append("kind", "trim");
    formData.append("caution", "fragile-skin");
    formData.append("caution", "swelling");
    expect(valuesOf(formData)).toEqual({ kind: "trim", caution: ["fragile-skin", "swelling"] });
  });
});

describe("fields that are begun anew", () => {
  const fromPage = { id: "a", pain: "4" };
  test.each([
    ["a draft goes before what the page gave, also where it is emptier", { id: "d" }, fromPage, "b", { id: "d" }],
    ["a discarded draft leaves the record as it stands, for a new one", {}, fromPage, "b", { id: "b", pain: "4" }],
    ["a draft saved elsewhere leaves the page's own id", {}, fromPage, undefined, fromPage],
    ["a form that the page did not fill stays empty", {}, undefined, "b", {}],
  ])("%s", (_, draft, page, id, begun) => expect(begunAnew(draft, page, id)).toEqual(begun));
});

describe("after a refusal", () => {
  test("everything typed is kept and each error stands by its field", () => {
    const state = refusedState(typed, new InputRefused({ "stations.1.circumferenceMm": "A circumference is missing." }));
    expect(state.values).toEqual(typed);
    expect(state.errors).toEqual({ "stations.7.circumferenceMm": "A circumference is missing." });
    expect(state.message).toBe("One field needs another look.");
  });

  test("someone else's save shows both versions of what differs, and sends the new version next time", () => {
    const theirs = { name: "Tomas R.", occupation: "boat builder" };
    const state = refusedState(
      { name: "Tomas", occupation: "boat builder", version: "3" },
      new ChangedMeanwhile("This wearer", theirs, 4),
      { name: "Name", occupation: "What the wearer does" },
    );
    expect(state.values.version).toBe("4");
    expect(state.changed).toEqual({ version: 4, fields: [{ label: "Name", theirs: "Tomas R.", yours: "Tomas" }] });
  });
});

test("a refusal of something else forgets nothing that was answered before", () => {
  const typed = { confirmed: ["pullLoadN=700", "displacementMm=190"], "pulls.0.loadN": "x" };
  expect(refusedState(typed, new InputRefused({ "pulls.0.loadN": "Give a number in N." })).asked).toEqual([
    "pullLoadN=700",
    "displacementMm=190",
  ]);
});
