// `npm run --silent invent -- --today 2027-02-28 --to FILE`: makes a store with the invented clinic as of a day, and prints
// one line of JSON: what has come of every episode. Exit status 2 where the day or the file cannot be used.
import { requireNode } from "./node-version.mjs";

requireNode();
Promise.all([import("./invented-store.mjs"), import("./say.mjs")]).then(([{ inventStore }, { runCommand }]) =>
  runCommand(() => inventStore(process.argv.slice(2))),
);
