/**
 * The published JSON Schema of a bundle, held against the schema that the program reads with: draft 2020-12 by an
 * independent validator (ajv, strict, with ajv-formats).
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import addFormats from "ajv-formats";
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bundleSchema, bundleSchemaText } from "../../docs/methods/making/bundle-schema";
import { Bundle, FitInputError, parseBundle } from "../../lib/fit";

const root = path.resolve(import.meta.dirname, "../..");
const published = readFileSync(path.join(root, "docs/fitting-bundle.schema.json"), "utf8");
const ready = readFileSync(path.join(root, "tests/fit/ready-transradial.json"), "utf8");

const ajv = new Ajv2020({ strict: true, allErrors: true });
addFormats(ajv);
const validate = ajv.compile(JSON.parse(published));
const accepted = (file: unknown): boolean => validate(file);

type Json = Record<string, unknown>;

/** The ready episode with every optional part in it too. */
function fullFile(): Json {
  const file = JSON.parse(ready);
  const at = "2026-10-05T10:12:00+01:00";
  file.limbMeasurements[0].capHeightMm = 20;
  file.sockets[0] = { ...file.sockets[0], state: "retired", stateSince: at, material: "clear" };
  file.fittings[0].reported = ["checks", "skin"];
  file.wearTrials[0].enteredAfterwards = true;
  file.wearTrials[0].events.push(
    { id: "x1", at, kind: "paused", note: "a call", reportedBy: "clinician" },
    { id: "x2", at, kind: "resumed" },
    { id: "x3", at, kind: "stop-sign", sign: "numbness" },
    {
      id: "x4",
      at,
      kind: "corrected",
      corrects: "e5",
      comfort: 7,
      feelings: [{ kind: "pressure", aspect: "lateral", third: "distal" }],
    },
  );
  file.carried = [{ id: "c1", aspect: "anterior", kind: "relief", amount: 2, unit: "mm", reason: "a mark", answers: "mark:mk0" }];
  file.acceptances = [{ gate: "marks-even", by: "A. Prosthetist", at, why: "faint" }];
  file.signOffs = [{ id: "s1", socketId: "so2", meaning: "wear trial accepted", by: "A. Prosthetist", at, withdrawnAt: at }];
  file.deliveredAt = at;
  file.ownLimits = { "fresh-days": 21 };
  return file;
}

const changed = (change: (file: ReturnType<typeof JSON.parse>) => void): Json => {
  const file = fullFile();
  change(file);
  return file;
};

describe("the published schema", () => {
  it("is what the code makes (else: npm run docs)", () => {
    expect(published).toBe(bundleSchemaText());
  });

  it("is draft 2020-12 under a name that is no address", () => {
    const schema = JSON.parse(published);
    expect(schema.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    expect(schema.$id).toBe("fitting-bundle/1");
    expect(schema).toMatchObject({ title: expect.any(String), description: expect.any(String) });
  });

  it("refuses unknown fields in every object with fields", () => {
    const open: string[] = [];
    const walk = (part: unknown, at: string): void => {
      if (typeof part !== "object" || part === null) return;
      if ("properties" in part && !("additionalProperties" in part && part.additionalProperties === false)) open.push(at);
      for (const [name, inner] of Object.entries(part)) walk(inner, `${at}/${name}`);
    };
    walk(JSON.parse(published), "");
    expect(open).toEqual([]);
    expect(published.match(/"additionalProperties": false/g)?.length).toBeGreaterThan(20);
  });

  it("accepts the example, and one with every optional part", () => {
    expect(accepted(JSON.parse(ready)), JSON.stringify(validate.errors)).toBe(true);
    expect(accepted(fullFile()), JSON.stringify(validate.errors)).toBe(true);
    expect(Bundle.safeParse(fullFile()).error).toBeUndefined();
  });
});

describe("what both refuse", () => {
  it.each<[string, (file: ReturnType<typeof JSON.parse>) => void]>([
    ["another format", (file) => (file.format = "fitting-bundle/2")],
    ["an unknown field at the top", (file) => (file.winner = "so2")],
    ["an unknown field deep inside", (file) => (file.wearTrials[0].inspections[0].marks[0].grade = 2)],
    ["an unknown field in an event", (file) => (file.wearTrials[0].events[0].comfort = 9)],
    ["a level that is no word of ours", (file) => (file.episode.level = "forearm")],
    ["a check that is none", (file) => (file.fittings[0].checks.colour = "met")],
    ["an answer that is none", (file) => (file.fittings[0].checks.donning = "perhaps")],
    ["a negative circumference", (file) => (file.limbMeasurements[0].stations[0].circumferenceMm = -176)],
    ["a length of 0", (file) => (file.episode.limbLengthMm = 0)],
    ["a rating of 11", (file) => (file.fittings[0].comfort = 11)],
    ["a number as text", (file) => (file.fittings[0].pulls[0].loadN = "22")],
    ["a missing id", (file) => delete file.sockets[0].id],
    ["an empty id", (file) => (file.sockets[0].id = "")],
    ["a socket number of 1.5", (file) => (file.sockets[0].number = 1.5)],
    ["a single station of a limb", (file) => (file.limbMeasurements[0].stations.length = 1)],
    ["an instant without its offset", (file) => (file.asOf = "2026-10-08T09:00:00")],
    ["30 February", (file) => (file.episode.lossOn = "2023-02-30")],
    ["an event of no kind", (file) => (file.wearTrials[0].events[0].kind = "began")],
    [
      "a stop sign without its sign",
      (file) => delete file.wearTrials[0].events.find((event: Json) => event.kind === "stop-sign").sign,
    ],
    ["an acceptance of a gate that is none", (file) => (file.acceptances[0].gate = "beauty")],
    ["an answer to nothing", (file) => (file.carried[0].answers = "mark:")],
    ["a joint in capitals", (file) => (file.fittings[0].motion[0].joint = "Elbow")],
    ["null where nothing was measured", (file) => (file.fittings[0].comfort = null)],
    ["a list of one thing as the thing", (file) => (file.sockets = file.sockets[0])],
  ])("%s", (_, change) => {
    const file = changed(change);
    expect(accepted(file)).toBe(false);
    expect(() => parseBundle(file)).toThrow(FitInputError);
  });
});

describe("what only the program refuses", () => {
  const refusals = bundleSchema().refusals;

  it.each<[string, (file: ReturnType<typeof JSON.parse>) => void]>([
    ["distances must increase from one station to the next", (file) => file.limbMeasurements[0].stations.reverse()],
    ["distances must increase from one station to the next", (file) => file.sockets[0].stations.reverse()],
    ["the same joint twice", (file) => file.fittings[0].motion.push(file.fittings[0].motion[0])],
    ["the same mark twice in one look", (file) => (file.wearTrials[0].inspections[0].marks[1].id = "mk0")],
    ["no socket has the id so9", (file) => (file.fittings[0].socketId = "so9")],
    ["no limb measurement has the id lm9", (file) => (file.sockets[0].limbMeasurementId = "lm9")],
    ["is used twice", (file) => (file.sockets[1].id = "so1")],
    ["a lower number", (file) => (file.sockets[0].derivedFrom = "so2")],
    ["not a check of a transradial fitting", (file) => (file.fittings[0].checks.sitting = "met")],
  ])("%s", (words, change) => {
    const file = changed(change);
    expect(accepted(file), JSON.stringify(validate.errors)).toBe(true);
    expect(() => parseBundle(file)).toThrow(words);
  });

  it("stands in the schema as a comment, and on the page of the file", () => {
    const page = readFileSync(path.join(root, "docs/methods/fitting-bundle.md"), "utf8");
    expect(refusals).toHaveLength(3);
    for (const refusal of refusals) {
      expect(published).toContain(`the program refuses, with the words: ${refusal}.`);
      expect(page).toContain(refusal);
    }
  });
});

/** Every place in a file, the file itself left out. */
function placesIn(part: unknown, at: (string | number)[] = []): (string | number)[][] {
  if (typeof part !== "object" || part === null) return [at];
  const inner = Array.isArray(part)
    ? part.flatMap((item, index) => placesIn(item, [...at, index]))
    : Object.entries(part).flatMap(([name, item]) => placesIn(item, [...at, name]));
  return at.length === 0 ? inner : [at, ...inner];
}

const places = placesIn(fullFile());
const valueAt = (file: unknown, place: readonly (string | number)[]): unknown =>
  place.reduce<unknown>((part, key) => (part as Record<string | number, unknown>)[key], file); // a place of the file, so every step is there

const anything = fc.oneof(
  fc.constantFrom<unknown>(
    null,
    true,
    "",
    "met",
    "e5",
    "2026-10-05T10:12:00Z",
    "2024-02-29",
    "transradial",
    "mm",
    [],
    {},
    [{}],
    0,
    -1,
    0.5,
    1,
    10,
    11,
    1e9,
  ),
  fc.double({ noNaN: true, noDefaultInfinity: true }),
  fc.string({ unit: "binary", maxLength: 12 }),
  // Around the longest text that is taken, in characters of one and of two UTF-16 units.
  fc.constantFrom("x".repeat(120), "x".repeat(121), "🦾".repeat(61), "🦾".repeat(120), "🦾".repeat(121), "x".repeat(4001)),
  fc.constantFrom(...places).map((place) => valueAt(fullFile(), place)),
);

const isList = (part: unknown): part is unknown[] => Array.isArray(part);
const isRecord = (part: unknown): part is Json => typeof part === "object" && part !== null && !isList(part);
const placesOf = (is: (part: unknown) => boolean) => fc.constantFrom(...places.filter((place) => is(valueAt(fullFile(), place))));

/** One change to one place. */
const mutation = fc
  .oneof(
    fc.record({ what: fc.constant("replace"), place: fc.constantFrom(...places), by: anything }),
    fc.record({ what: fc.constant("delete"), place: fc.constantFrom(...places) }),
    fc.record({
      what: fc.constant("add a field"),
      place: placesOf(isRecord),
      by: anything,
      name: fc.constantFrom("note", "id", "third", "comfort", "unknown"),
    }),
    fc.record({ what: fc.constantFrom("double", "reverse"), place: placesOf(isList) }),
  )
  .map((change) => {
    const file = fullFile();
    const { what, place } = change;
    const key = place.at(-1) ?? "";
    const above = valueAt(file, place.slice(0, -1)) as Record<string | number, unknown>; // a place has something above it
    const here = above[key];
    if (what === "delete" && isList(above)) above.splice(Number(key), 1);
    else if (what === "delete") delete above[key];
    else if (what === "replace" && "by" in change) above[key] = change.by;
    else if (isRecord(here) && "name" in change) here[change.name] = change.by;
    else if (isList(here)) here.push(...(what === "double" ? here : here.splice(0).reverse()));
    return file;
  });

describe("any one change to a file", () => {
  const refusals = bundleSchema().refusals;

  it("is accepted by the schema wherever the program's shape accepts it; what only the program refuses is on the list", () => {
    const seen = { both: 0, neither: 0, onlySchema: 0 };
    fc.assert(
      fc.property(mutation, (file) => {
        const shape = Bundle.safeParse(file);
        const bySchema = accepted(file);
        if (shape.success) {
          seen.both++;
          expect(bySchema, JSON.stringify(validate.errors)).toBe(true);
          return;
        }
        if (!bySchema) {
          seen.neither++;
          return;
        }
        seen.onlySchema++;
        for (const issue of shape.error.issues) {
          const place = issue.path.map((key) => (typeof key === "symbol" ? String(key) : key));
          // JSON Schema counts characters, the program UTF-16 units: such a text is the one other thing on the list.
          const text = valueAt(file, place);
          const onlyInUnits =
            issue.code === "too_big" &&
            typeof text === "string" &&
            [...text].length <= Number(issue.maximum) &&
            text.length > Number(issue.maximum);
          if (!onlyInUnits) expect(refusals, JSON.stringify(issue)).toContain(issue.message);
        }
      }),
      { numRuns: 1000 },
    );
    // The property says something only where all three were met.
    expect(Math.min(seen.both, seen.neither, seen.onlySchema)).toBeGreaterThan(10);
  });
});
