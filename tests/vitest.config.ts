import { accessSync, constants } from "node:fs";
import path from "node:path";
import { defineConfig } from "vitest/config";

const root = path.resolve(import.meta.dirname, "..");

/** Every commit of a test's store is synced: in memory that takes a hundredth of the time. What a disk loses is tried by `faults`. */
function keepStoresInMemory(): void {
  try {
    accessSync("/dev/shm", constants.W_OK);
    process.env.TMPDIR = "/dev/shm";
  } catch {
    // A system without it has its own temporary folder.
  }
}

/** Tests that break a running server need the built site and a machine of their own: `--mode faults` runs them alone. */
export default defineConfig(({ mode }) => {
  const onDisk = mode === "faults";
  if (!onDisk) keepStoresInMemory();
  const store = { globalSetup: ["tests/records/migrated-template.ts"], testTimeout: 60_000, hookTimeout: 60_000 };
  /** These put something else in a module's place, or load it anew, which no other file may see. */
  const withMocks = ["adjustment-outcomes-fault", "moved-clock", "wearer-link"].map((name) => `tests/records/${name}.test.ts`);
  return {
    root,
    resolve: {
      alias: {
        "@": root,
        // Outside a server bundle this package only throws.
        "server-only": path.join(root, "node_modules/server-only/empty.js"),
      },
    },
    test: onDisk
      ? { ...store, include: ["tests/faults/**/*.faults.ts"] }
      : {
          // By default one core is left out.
          maxWorkers: "100%",
          projects: [
            {
              extends: true,
              test: {
                name: "science",
                include: ["tests/{fit,parts,trail}/**/*.test.{ts,tsx}", "tests/*.test.ts"],
                // Nothing here keeps a state between files: they share one world, and read the science once.
                isolate: false,
                testTimeout: 20_000,
              },
            },
            {
              extends: true,
              test: {
                name: "store",
                include: ["tests/{records,faults,stories}/**/*.test.ts"],
                exclude: withMocks,
                // Each test opens and closes a store of its own; the modules are the same for all.
                isolate: false,
                ...store,
              },
            },
            { extends: true, test: { name: "store, with mocks", include: withMocks, ...store } },
          ],
        },
  };
});
