// `npm run demo`: everything that a bare clone needs, then the invented clinic at http://localhost:3000.
// `npm run demo -- --afresh` throws away what was changed in it before. What can be set: environment.mjs.
import { requireNode } from "./node-version.mjs";

requireNode();
Promise.all([import("./serve.mjs"), import("./say.mjs")]).then(([{ serveDemo }, { runCommand }]) =>
  runCommand(() => serveDemo({ afresh: process.argv.includes("--afresh") })),
);
