// `npm start`: everything that a bare clone needs, then the clinic's own records at http://localhost:3000.
// What can be set: environment.mjs.
import { requireNode } from "./node-version.mjs";

requireNode();
Promise.all([import("./serve.mjs"), import("./say.mjs")]).then(([{ serveClinic }, { runCommand }]) => runCommand(serveClinic));
