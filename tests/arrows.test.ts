import { mkdirSync, mkdtempSync, writeFileSync } from "node:fs";
import { rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { cruise } from "dependency-cruiser";
import { expect, onTestFinished, test } from "vitest";
import arrows from "./arrows.mjs";

test.each([
  ["fit-knows-nobody", "lib/fit/worn.ts", "../trail/chain", "lib/trail/chain.ts"],
  ["fit-knows-nobody", "lib/fit/worn.ts", "node:fs", null],
  ["trail-knows-only-fit", "lib/trail/chain.ts", "../records/read", "lib/records/read.ts"],
  ["store-knows-trail-and-fit", "lib/print/sheet.ts", "../setup/stop.mjs", "lib/setup/stop.mjs"],
  ["nobody-knows-app", "lib/records/read.ts", "../../app/today/table", "app/today/table.ts"],
  ["nobody-knows-app", "prisma/invented-clinic/load.ts", "../../app/_parts/map", "app/_parts/map.ts"],
  ["app-goes-through-the-store", "app/today/actions.ts", "../../lib/trail/chain", "lib/trail/chain.ts"],
  ["app-goes-through-the-store", "app/today/actions.ts", "../../lib/generated/client", "lib/generated/client.ts"],
  ["generated-client-is-the-stores", "lib/exchange/write.ts", "../generated/client", "lib/generated/client.ts"],
  ["setup-starts-without-packages", "lib/setup/demo.mjs", "../../prisma/migrate.mjs", "prisma/migrate.mjs"],
  ["every-import-is-found", "lib/records/read.ts", "./gone", null],
  ["program-needs-no-test", "lib/records/read.ts", "../../tests/fit/limb", "tests/fit/limb.ts"],
])("the rule %s bites where %s imports %s", async (rule, from, specifier, to) => {
  const files = { [from]: `import "${specifier}";`, ...(to === null ? {} : { [to]: "export {};" }) };
  expect(await brokenRules(files)).toContain(rule);
});

test("the rule no-circles bites where two files import each other, be it only for a type", async () => {
  const broken = await brokenRules({
    "lib/fit/one.ts": 'import type { Two } from "./two"; export type One = { two: Two };',
    "lib/fit/two.ts": 'import type { One } from "./one"; export type Two = { one: One };',
  });
  expect(broken).toContain("no-circles");
});

test("arrows that point the right way break no rule", async () => {
  const broken = await brokenRules({
    "app/today/page.ts": 'import "../_parts/map"; import "../../lib/records/read"; import "../../lib/fit/worn";',
    "app/_parts/map.ts": 'import "../../lib/fit/worn";',
    "lib/records/read.ts":
      'import "../access/roles"; import "../trail/chain"; import "../generated/client"; import "../fit/worn";',
    "lib/access/roles.ts": 'import "../fit/worn";',
    "lib/trail/chain.ts": 'import "../fit/worn"; import "node:crypto";',
    "lib/fit/worn.ts": 'import "./words";',
    "lib/fit/words.ts": "export {};",
    "lib/generated/client.ts": "export {};",
    "lib/setup/demo.mjs": 'import "node:fs"; await import("../../prisma/migrate.mjs");',
    "prisma/migrate.mjs": "export {};",
  });
  expect(broken).toEqual([]);
});

/** Lays out the files in a folder of their own and returns the names of the rules that they break. */
async function brokenRules(files: Record<string, string>): Promise<string[]> {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-arrows-"));
  onTestFinished(() => rm(folder, { recursive: true, force: true }));
  for (const [name, text] of Object.entries(files)) {
    mkdirSync(path.join(folder, path.dirname(name)), { recursive: true });
    writeFileSync(path.join(folder, name), text);
  }
  const folders = [...new Set(Object.keys(files).map((name) => name.split("/")[0] ?? name))];
  const { tsConfig: _ours, ...options } = arrows.options ?? {};
  const { forbidden = [] } = arrows;
  const { output } = await cruise(folders, { ...options, baseDir: folder, validate: true, ruleSet: { forbidden } });
  if (typeof output === "string") throw new Error("the cruise reported in words");
  return output.summary.violations.map(({ rule }) => rule.name);
}
