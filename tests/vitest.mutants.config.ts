/**
 * The tests that judge the gates, the skin marks and the wear trial, as Stryker runs them once a mutant: without the
 * store's database, with few tries a property, and all files in one world so that the science is read only once.
 */
import path from "node:path";
import { defineConfig } from "vitest/config";
import { BaseSequencer, type TestSpecification } from "vitest/node";

const root = path.resolve(import.meta.dirname, "..");
const subjects = ["skin-marks*", "disc-in-rectangle*", "gates-*", "readiness-gates", "readiness-decision", "replay-*"];

/** What looks at the edges first, and of that what has least to read: a mutant is done with at the first test that fails. */
class EdgesFirst extends BaseSequencer {
  override async sort(files: TestSpecification[]): Promise<TestSpecification[]> {
    const rank = ({ moduleId }: TestSpecification) =>
      moduleId.endsWith("-edges.test.ts") ? 0 : moduleId.includes(".properties.") ? 2 : 1;
    return files.toSorted((a, b) => rank(a) - rank(b) || (a.moduleId > b.moduleId ? -1 : 1));
  }
}

export default defineConfig({
  root,
  resolve: { alias: { "@": root } },
  test: {
    include: subjects.map((name) => `tests/fit/${name}.test.ts`),
    isolate: false,
    // The first run measures what covers what, which takes long on a busy machine.
    testTimeout: 60_000,
    sequence: { sequencer: EdgesFirst },
    env: { FIT_RUNS: process.env.FIT_RUNS ?? "20" },
  },
});
