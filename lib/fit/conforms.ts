/**
 * A quick yes: does a value surely keep to a zod schema? What is not surely right is left to zod, which alone says what
 * is wrong and where.
 */
import { z } from "zod";

type Check = (value: unknown) => boolean;

/** Nothing is sure of what this file does not know. */
const never: Check = () => false;

/**
 * Makes a check of a schema, several times as quick as `schema.safeParse(value).success`, for it neither copies nor
 * explains. It is read off the schema, so there is one description of what is right.
 *
 * The check says yes only where zod would say yes and hand back the same content. It may say no to what is right: to
 * objects that are not plain, and to kinds of schema that it does not know (defaults, transforms, objects that take
 * unknown fields, unions without a discriminator).
 */
export function conformsTo<Schema extends z.ZodType>(schema: Schema): (value: unknown) => value is z.output<Schema> {
  let check: Check | undefined;
  return (value): value is z.output<Schema> => {
    check ??= checkOf(schema);
    return check(value);
  };
}

function checkOf(schema: z.core.$ZodType): Check {
  const { def } = (schema as z.core.$ZodTypes)._zod; // zod's own union of what it makes, to be told apart by `type`
  const rules = rulesOf(def.checks ?? []);
  if (rules === null) return never;
  if (def.type === "array") return listOf(checkOf(def.element), rules);
  if (def.type === "string" && !("format" in def)) return textOf(rules);
  if (def.type === "number" && !("format" in def)) return numberOf(rules);
  // Of the others, no schema of ours has rules beside its type.
  return def.checks?.length ? never : withoutRules(schema as z.core.$ZodTypes); // as above
}

function withoutRules(schema: z.core.$ZodTypes): Check {
  const { def } = schema._zod;
  switch (def.type) {
    case "string":
      return "format" in def ? ofFormat(def) : never;
    case "boolean":
      return (value) => typeof value === "boolean";
    case "literal":
      return oneOf(def.values);
    case "enum":
      return listed(Object.values(def.entries));
    case "nullable":
      return orElse(null, checkOf(def.innerType));
    case "optional":
      // Where undefined is refused, a field may be optional still.
      return z.safeParse(schema, undefined).success ? orElse(undefined, checkOf(def.innerType)) : never;
    case "object":
      return objectOf(def);
    case "union":
      return "discriminator" in def ? unionOf(def) : never;
    case "record":
      return recordOf(def);
    default:
      return never;
  }
}

/** What stands beside a type in a schema. */
interface Rules {
  /** Of a text or a list. */
  leastLength: number;
  mostLength: number;
  least: number;
  most: number;
  /** Limits that are themselves left out. */
  above: number;
  below: number;
  whole: boolean;
  patterns: RegExp[];
  refinements: ((value: unknown) => unknown)[];
}

/** Null where any of them is not known. */
function rulesOf(checks: readonly z.core.$ZodCheck<never>[]): Rules | null {
  const rules: Rules = {
    leastLength: 0,
    mostLength: Number.POSITIVE_INFINITY,
    least: -Number.MAX_VALUE,
    most: Number.MAX_VALUE,
    above: Number.NEGATIVE_INFINITY,
    below: Number.POSITIVE_INFINITY,
    whole: false,
    patterns: [],
    refinements: [],
  };
  return checks.every((check) => addRule(rules, check._zod.def)) ? rules : null;
}

/** The fields by which the checks differ; zod has one type for each. */
interface CheckDefinition extends z.core.$ZodCheckDef {
  minimum?: number;
  maximum?: number;
  value?: unknown;
  inclusive?: boolean;
  format?: string;
  pattern?: RegExp;
  fn?: (value: unknown) => unknown;
}

function addRule(
  rules: Rules,
  { check, minimum, maximum, value, inclusive, format, pattern, fn, when }: CheckDefinition,
): boolean {
  if (check === "min_length" && minimum !== undefined) rules.leastLength = Math.max(rules.leastLength, minimum);
  else if (check === "max_length" && maximum !== undefined) rules.mostLength = Math.min(rules.mostLength, maximum);
  else if (check === "greater_than" && typeof value === "number") {
    if (inclusive) rules.least = Math.max(rules.least, value);
    else rules.above = Math.max(rules.above, value);
  } else if (check === "less_than" && typeof value === "number") {
    if (inclusive) rules.most = Math.min(rules.most, value);
    else rules.below = Math.min(rules.below, value);
  } else if (check === "number_format" && format === "safeint") rules.whole = true;
  else if (check === "string_format" && format === "regex" && pattern) rules.patterns.push(pattern);
  else if (check === "custom" && fn && !when) rules.refinements.push(fn);
  else return false;
  return true;
}

function matchesAll(patterns: readonly RegExp[], text: string): boolean {
  for (const pattern of patterns) if (!matches(pattern, text)) return false;
  return true;
}

const keeps = ({ refinements }: Rules, value: unknown): boolean =>
  refinements.length === 0 || refinements.every((holds) => holds(value) === true);

function textOf(rules: Rules): Check {
  const { leastLength, mostLength, patterns } = rules;
  return (value) =>
    typeof value === "string" &&
    value.length >= leastLength &&
    value.length <= mostLength &&
    matchesAll(patterns, value) &&
    keeps(rules, value);
}

function numberOf(rules: Rules): Check {
  const { least, most, above, below, whole } = rules;
  // False for NaN and what is not finite.
  return (value) =>
    typeof value === "number" &&
    value >= least &&
    value <= most &&
    value > above &&
    value < below &&
    (!whole || Number.isSafeInteger(value)) &&
    keeps(rules, value);
}

/** Formats that zod holds against one pattern and nothing else. */
const byPattern: readonly string[] = ["datetime", "date"];

function ofFormat({ format, pattern }: { format: unknown; pattern?: unknown }): Check {
  if (typeof format !== "string" || !byPattern.includes(format) || !(pattern instanceof RegExp)) return never;
  return (value) => typeof value === "string" && matches(pattern, value);
}

function matches(pattern: RegExp, text: string): boolean {
  pattern.lastIndex = 0;
  return pattern.test(text);
}

function oneOf(values: readonly unknown[]): Check {
  const allowed = new Set(values);
  return (value) => allowed.has(value);
}

/** A list with numbers in it stands for names of its own making as well. */
const listed = (values: readonly (string | number)[]): Check =>
  values.every((value) => typeof value === "string") ? oneOf(values) : never;

const orElse =
  (absent: null | undefined, check: Check): Check =>
  (value) =>
    value === absent || check(value);

function listOf(check: Check, rules: Rules): Check {
  const { leastLength, mostLength } = rules;
  return (value) => {
    if (!Array.isArray(value) || value.length < leastLength || value.length > mostLength) return false;
    for (const item of value) if (!check(item)) return false;
    return keeps(rules, value);
  };
}

const isPlain = (value: unknown): value is Record<string, unknown> =>
  typeof value === "object" && value !== null && Object.getPrototypeOf(value) === Object.prototype;

function objectOf({ shape, catchall }: z.core.$ZodObjectDef): Check {
  const takesNothingElse = catchall?._zod.def.type === "never";
  if (!takesNothingElse) return never;
  const fields = new Map(
    Object.entries(shape).map(([name, field]) => [
      name,
      { check: checkOf(field), mayLack: z.safeParse(field, undefined).success },
    ]),
  );
  const mustHave = [...fields.values()].filter(({ mayLack }) => !mayLack).length;
  return (value) => {
    if (!isPlain(value)) return false;
    let had = 0;
    for (const name in value) {
      const field = fields.get(name);
      if (!field?.check(value[name])) return false;
      if (!field.mayLack) had++;
    }
    return had === mustHave;
  };
}

/** Objects that are told apart by a word in one field. */
function unionOf({ discriminator, options }: z.core.$ZodUnionDef & { discriminator: unknown }): Check {
  if (typeof discriminator !== "string") return never;
  const byWord = new Map<unknown, Check>();
  for (const option of options) {
    const { def } = (option as z.core.$ZodTypes)._zod; // as above
    const word = def.type === "object" ? (def.shape[discriminator] as z.core.$ZodTypes | undefined)?._zod.def : undefined; // as above
    if (word?.type !== "literal") return never;
    for (const value of word.values) byWord.set(value, checkOf(option));
  }
  return (value) => isPlain(value) && (byWord.get(value[discriminator]) ?? never)(value);
}

function recordOf({ keyType, valueType, ...def }: z.core.$ZodRecordDef): Check {
  // Where the keys are listed, zod asks for all of them, unless it says that a part will do.
  const { type } = keyType._zod.def;
  const anyPart = type === "string" || (type === "enum" && "partial" in def && def.partial === true);
  if (!anyPart) return never;
  const [nameCheck, check] = [checkOf(keyType), checkOf(valueType)];
  return (value) => {
    if (!isPlain(value)) return false;
    // Zod leaves this name out, which would change what is in it.
    if (Object.hasOwn(value, "__proto__")) return false;
    for (const name in value) if (!nameCheck(name) || !check(value[name])) return false;
    return true;
  };
}
