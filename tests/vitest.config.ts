import path from "node:path";
import { defineConfig } from "vitest/config";

const root = path.resolve(import.meta.dirname, "..");

/** Tests that break a running server need the built site and a machine of their own: `--mode faults` runs them alone. */
export default defineConfig(({ mode }) => ({
  root,
  resolve: {
    alias: {
      "@": root,
      // Outside a server bundle this package only throws.
      "server-only": path.join(root, "node_modules/server-only/empty.js"),
    },
  },
  test: {
    include: mode === "faults" ? ["tests/faults/**/*.faults.ts"] : ["tests/**/*.test.ts", "tests/**/*.test.tsx"],
    exclude: ["tests/screens/**"],
    globalSetup: ["tests/records/migrated-template.ts"],
    // Tests of the store hash passwords and write with full sync: slow on a small machine, and not a failure.
    testTimeout: 20_000,
    hookTimeout: 60_000,
  },
}));
