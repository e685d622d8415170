// `npm test`: everything that a bare clone needs, then every check, ending at the first that fails.
// The last line counts all of them. `npm run test:all` adds what is slow and rare. What can be set: environment.mjs.
import { requireNode } from "./node-version.mjs";

requireNode();
Promise.all([import("./checks.mjs"), import("./say.mjs")]).then(([{ runChecks }, { runCommand }]) =>
  runCommand(() => runChecks({ all: process.argv.includes("--all") })),
);
