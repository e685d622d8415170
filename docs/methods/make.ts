/** `npm run docs`: runs the examples of these pages, writes their results in, and writes the pages that are made wholly from code. */
import { writeFileSync } from "node:fs";
import path from "node:path";
import { docsFolder, madePages } from "./making/made-pages";

const changed = madePages().filter(({ made, present }) => made !== present);
for (const { file, made } of changed) {
  writeFileSync(path.join(docsFolder, file), made);
  console.info(`${file} written`);
}
console.info(changed.length === 0 ? "Every page says what the code gives." : `${changed.length} files brought up to date.`);
