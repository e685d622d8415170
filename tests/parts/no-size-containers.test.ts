import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";

// Seen in Chromium 156: what stands in a size container is left out where a page comes in pieces (tests/screens/slow-network.spec.ts).
test("nothing is laid out by a size container", () => {
  const sheets = readdirSync("app", { recursive: true, encoding: "utf8" }).filter((name) => name.endsWith(".css"));
  expect(sheets.length).toBeGreaterThan(10);
  expect(sheets.filter((sheet) => readFileSync(`app/${sheet}`, "utf8").includes("container-type"))).toEqual([]);
});
