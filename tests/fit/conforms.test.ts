/** The quick yes is held against zod, the library whose schema it reads: https://zod.dev, the version in package.json. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { z } from "zod";
import { assessReadiness, Bundle, FitInputError, parseBundle } from "@/lib/fit";
import { conformsTo } from "@/lib/fit/conforms";
import { readyBundle } from "./ready-bundle";
import ready from "./ready-transradial.json";
import { runs } from "./runs";

const isBundle = conformsTo(Bundle);

/** Every place in a document: what holds it, and under which name. */
function places(holder: object): { holder: Record<string, unknown>; name: string }[] {
  return Object.entries(holder).flatMap(([name, value]) => [
    { holder: holder as Record<string, unknown>, name }, // Object.entries forgets the type of the keys
    ...(typeof value === "object" && value !== null ? places(value) : []),
  ]);
}

const odd = fc.constantFrom<unknown>(
  null,
  undefined,
  "",
  "x",
  "so1",
  "none",
  "2026-10-05T10:00:00Z",
  "2026-02-30T10:00:00Z",
  "2026-10-05",
  Number.NaN,
  Number.POSITIVE_INFINITY,
  -1,
  0,
  0.5,
  3,
  1e9,
  true,
  [],
  {},
  [1, 2],
  { id: "x" },
  "x".repeat(5000),
);

/** The ready bundle with up to three places overwritten, taken out or added to. */
const spoilt = fc
  .array(fc.record({ at: fc.nat(), how: fc.constantFrom("overwrite", "remove", "add", "repeat"), value: odd }), { maxLength: 3 })
  .map((changes) => {
    const bundle: unknown = structuredClone(ready);
    for (const { at, how, value } of changes) {
      const all = places({ bundle });
      const { holder, name } = all[at % all.length] ?? { holder: {}, name: "" };
      const held = holder[name];
      if (how === "remove" && !Array.isArray(holder)) delete holder[name];
      else if (how === "add" && typeof held === "object" && held !== null && !Array.isArray(held))
        Object.assign(held, { unheardOf: value });
      else if (how === "repeat" && Array.isArray(held)) held.push(...held.map((item) => structuredClone(item)));
      else if (name !== "bundle") holder[name] = value;
    }
    return bundle;
  });

describe("a quick yes to a bundle", () => {
  it("is said of the ready one", () => {
    expect(isBundle(structuredClone(ready))).toBe(true);
  });

  it("is said exactly where zod takes it, which then hands back the same content", () => {
    let [taken, refused] = [0, 0];
    fc.assert(
      fc.property(spoilt, (bundle) => {
        const byZod = Bundle.safeParse(bundle);
        expect(isBundle(bundle)).toBe(byZod.success);
        if (byZod.success) expect(byZod.data).toEqual(bundle);
        if (byZod.success) taken++;
        else refused++;
      }),
      runs(),
    );
    expect(Math.min(taken, refused)).toBeGreaterThan(10);
  });

  it("leaves it to the full reading to say what is wrong, also with its references", () => {
    const refusalOf = (read: (bundle: Bundle) => unknown, bundle: Bundle) => {
      try {
        read(bundle);
        return null;
      } catch (refusal) {
        if (refusal instanceof FitInputError) return { path: refusal.path, message: refusal.message };
        throw refusal;
      }
    };
    const wrongReferences: ((bundle: Bundle) => void)[] = [
      ({ sockets }) => void sockets.push(...structuredClone(sockets)),
      ({ sockets }) => void Object.assign(sockets[1] ?? {}, { number: 1 }),
      ({ sockets }) => void Object.assign(sockets[1] ?? {}, { derivedFrom: "nobody" }),
      ({ sockets }) => void Object.assign(sockets[0] ?? {}, { derivedFrom: "so2" }),
      ({ sockets }) => void Object.assign(sockets[0] ?? {}, { limbMeasurementId: "nobody" }),
      ({ fittings }) => void Object.assign(fittings[0] ?? {}, { socketId: "nobody" }),
      ({ fittings }) => void Object.assign(fittings[0]?.checks ?? {}, { sitting: "met" }),
      ({ wearTrials }) => void Object.assign(wearTrials[0] ?? {}, { socketId: "nobody" }),
      ({ limbMeasurements }) => void limbMeasurements.push(...structuredClone(limbMeasurements)),
      ({ episode }) => void Object.assign(episode, { limbLengthMm: -1 }),
    ];
    for (const spoil of wrongReferences) {
      const bundle = readyBundle();
      spoil(bundle);
      const refusal = refusalOf(parseBundle, bundle);
      expect(refusal).not.toBeNull();
      expect(refusalOf(assessReadiness, bundle)).toEqual(refusal);
    }
  });
});

describe("a quick yes to other schemas", () => {
  const values: readonly unknown[] = [
    undefined,
    null,
    "",
    "a",
    "b",
    "ab",
    "2026-10-05",
    "2026-10-05T10:00:00Z",
    -1,
    0,
    1,
    1.5,
    2 ** 53,
    Number.NaN,
    Number.POSITIVE_INFINITY,
    true,
    [],
    ["a"],
    ["a", "b", "c"],
    ["a", 1],
    {},
    { a: 1 },
    { a: undefined },
    { a: "a" },
    { a: "a", b: 1 },
    { a: "b", b: 1 },
    { a: 1, c: 1 },
    { b: 1 },
  ];

  const known = {
    text: z.string().min(1).max(1),
    pattern: z.string().regex(/^a/),
    date: z.iso.date(),
    instant: z.iso.datetime({ offset: true }),
    number: z.number(),
    limits: z.number().min(0).max(1),
    "limits left out": z.number().positive().lt(1.5),
    whole: z.number().int().nonnegative(),
    yes: z.boolean(),
    word: z.literal("a"),
    words: z.enum(["a", "b"]),
    "or null": z.string().nullable(),
    "or nothing": z.string().optional(),
    list: z.array(z.string()).min(1).max(2),
    "list with a rule": z.array(z.string()).refine((items) => items.length === 3),
    object: z.strictObject({ a: z.number().optional() }),
    "two fields": z.strictObject({ a: z.string(), b: z.number().optional() }),
    "told apart": z.discriminatedUnion("a", [
      z.strictObject({ a: z.literal("a"), b: z.number() }),
      z.strictObject({ a: z.literal("b"), b: z.string() }),
    ]),
    record: z.record(z.string(), z.number()),
    "part of a record": z.partialRecord(z.enum(["a", "b"]), z.number()),
  } satisfies Record<string, z.ZodType>;

  it.each(Object.entries(known))("%s: as zod", (_, schema) => {
    const answers = values.map((value) => ({ value, conforms: conformsTo<z.ZodType>(schema)(value) }));
    expect(answers).toEqual(values.map((value) => ({ value, conforms: schema.safeParse(value).success })));
    expect(answers.some(({ conforms }) => conforms) && answers.some(({ conforms }) => !conforms)).toBe(true);
  });

  const unknown = {
    "a default": z.string().default("a"),
    "a transform": z.string().transform((text) => text.length),
    trimming: z.string().trim(),
    "another format": z.email(),
    "a rule beside a format": z.iso.date().min(11),
    "a rule beside a word": z.enum(["a", "b"]).refine((word) => word === "b"),
    "steps of a number": z.number().multipleOf(2),
    "objects that take more": z.looseObject({ a: z.number() }),
    "objects that drop more": z.object({ a: z.number() }),
    "a rule of an object": z.strictObject({ a: z.number() }).refine(({ a }) => a > 1),
    "either of two": z.union([z.string(), z.number()]),
    "all of a record": z.record(z.enum(["a", "b"]), z.number()),
    dates: z.date(),
    anything: z.any(),
  } satisfies Record<string, z.ZodType>;

  it.each(Object.entries(unknown))("%s: nothing is sure", (_, schema) => {
    const all = [...values, "a@b.example", { a: 1, b: 1 }, { a: 2 }];
    expect(all.filter((value) => conformsTo<z.ZodType>(schema)(value))).toEqual([]);
  });

  it("objects that are not plain: nothing is sure", () => {
    for (const value of [Object.create({ a: 1 }), new Date(0), new Map()])
      expect(conformsTo(z.strictObject({ a: z.number().optional() }))(value)).toBe(false);
    expect(conformsTo(z.record(z.string(), z.number()))(JSON.parse('{"__proto__": 1}'))).toBe(false);
  });
});
