import { describe, expect, test } from "vitest";
import { inputOf } from "@/app/_parts/form-state";
import { typedAngle, typedRows } from "@/app/_parts/typed-rows";
import { fieldOfFitting, fittingFromForm } from "@/app/sockets/[socket]/fitting/fitting-input";
import { doneOf, partsOfWork } from "@/app/sockets/[socket]/fitting/progress";
import { checksOf, levels } from "@/lib/fit";

describe("the parts of a fitting", () => {
  test.each(levels)("%s: every check of the level is asked, once", (level) => {
    const fields = partsOfWork(level).flatMap(({ things }) => things.map((thing) => thing.fields));
    for (const key of checksOf(level)) expect(fields.filter((field) => field.test(`checks.${key}`))).toHaveLength(1);
  });

  test("each says how much of it is answered; nothing is at the beginning", () => {
    const parts = partsOfWork("transradial");
    expect(doneOf(parts, {}).map(({ done }) => done)).toEqual([0, 0, 0, 0, 0, 0]);
    expect(doneOf(parts, {}).map(({ title, of }) => `${title} ${of}`)).toEqual([
      "Before donning 1",
      "Donning 2",
      "Lifting and pulling 5",
      "Moving 2",
      "What the wearer says 5",
      "Doffing and skin 2",
    ]);
    const answered = doneOf(parts, {
      place: "clinic",
      "checks.donning": "not done",
      "checks.rotation": "concern",
      "pulls.0.loadN": "",
      "pulls.1.loadN": "45",
      "motion.0.jointId": "elbow-flexion",
      "motion.0.withDeg": "",
      comfort: "",
    });
    expect(answered.map(({ done }) => done)).toEqual([1, 1, 2, 0, 1, 0]);
    expect(answered[3]?.free).toEqual(["Edges neither dig in nor gape", "Motion"]);
  });
});

describe("rows as they are typed", () => {
  test("keep their order and leave other fields alone", () => {
    expect(
      typedRows(
        { "pulls.10.loadN": "45", "pulls.2.loadN": "22", "pulls.2.displacementMm": "1,6", pulls: "x", "other.0.a": "1" },
        "pulls",
      ),
    ).toEqual([
      { row: 2, fields: { loadN: "22", displacementMm: "1,6" } },
      { row: 10, fields: { loadN: "45" } },
    ]);
  });

  test.each([
    ["131", 131],
    ["131°", 131],
    [" 131 deg ", 131],
    ["−5,5", -5.5],
    ["-5.5", -5.5],
    ["about 90", undefined],
    ["", undefined],
    [undefined, undefined],
  ])("an angle of %j is %j", (text, deg) => {
    expect(typedAngle(text)).toBe(deg);
  });
});

describe("from the form to the command", () => {
  test("a movement without angles is left out, and an error finds the row of its movement", () => {
    const { input, nameOf } = inputOf({
      "motion.0.jointId": "elbow-flexion",
      "motion.0.withoutDeg": "",
      "motion.0.withDeg": "",
      "motion.1.jointId": "elbow-extension",
      "motion.1.withoutDeg": "5",
      "motion.1.withDeg": "5",
    });
    expect(fittingFromForm(input)).toEqual({ motion: [{ joint: "elbow-extension", withoutDeg: "5", withDeg: "5" }] });
    expect(nameOf(fieldOfFitting("motion.0.joint"))).toBe("motion.1.jointId");
    expect(nameOf(fieldOfFitting("motion.0.withDeg"))).toBe("motion.1.withDeg");
  });

  test("what was told is named; where nothing was ticked nothing is said", () => {
    expect(fittingFromForm({ told: { checks: "yes", skin: "yes" } })).toEqual({ reported: ["checks", "skin"] });
    expect(fittingFromForm({ place: "clinic" })).toEqual({ place: "clinic" });
  });
});
