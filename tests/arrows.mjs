// @ts-check
// Which folder may know which: app → records, access, exchange, print → trail → fit.
// Run by `npm test`; arrows.test.ts shows that each rule bites.

const store = "^lib/(records|access|exchange|print)/";

/** @type {import("dependency-cruiser").IConfiguration} */
export default {
  forbidden: [
    {
      name: "fit-knows-nobody",
      comment: "The science stays pure: itself, zod and libraries of numbers, and nothing that reads a clock, a disk or chance.",
      severity: "error",
      from: { path: "^lib/fit/" },
      to: { pathNot: "^lib/fit/|(^|/)node_modules/(zod|simple-statistics|ml-levenberg-marquardt|ml-matrix)/" },
    },
    {
      name: "trail-knows-only-fit",
      comment: "The trail is written by the store; it does not look back at it.",
      severity: "error",
      from: { path: "^lib/trail/" },
      to: { path: "^(app|prisma|tests)/|^lib/(?!trail/|fit/)" },
    },
    {
      name: "store-knows-trail-and-fit",
      comment: "Records, access, exchange and print may use each other, the trail and the science; never a screen.",
      severity: "error",
      from: { path: store },
      to: { path: "^(app|prisma|tests)/|^lib/setup/|^proxy\\.ts$" },
    },
    {
      name: "nobody-knows-app",
      comment: "Screens and the parts they share (app/_parts) are the last of the line. Only tests may look at them.",
      severity: "error",
      from: { pathNot: "^(app|tests)/" },
      to: { path: "^app/" },
    },
    {
      name: "app-goes-through-the-store",
      comment: "One way in for each change: a screen calls a command or a query, never the database, the trail or the setup.",
      severity: "error",
      from: { path: "^(app/|proxy\\.ts$)" },
      to: { path: "^(prisma|tests)/|^lib/(trail|setup|generated)/|(^|/)node_modules/(better-sqlite3|@prisma/[^/]+)/" },
    },
    {
      name: "generated-client-is-the-stores",
      comment: "Only the store, the accounts and what lies in prisma/ speak to the database. Tests may look at what was written.",
      severity: "error",
      from: { pathNot: "^lib/(records|access|generated)/|^(prisma|tests)/" },
      to: { path: "^lib/generated/" },
    },
    {
      name: "setup-starts-without-packages",
      comment: "The two commands begin on a bare clone: a package may be reached only by an import() after the installation.",
      severity: "error",
      from: { path: "^lib/setup/" },
      to: { dynamic: false, pathNot: "^lib/setup/", dependencyTypesNot: ["core"] },
    },
    {
      name: "no-circles",
      severity: "error",
      from: {},
      to: { circular: true },
    },
    {
      name: "every-import-is-found",
      severity: "error",
      from: {},
      to: { couldNotResolve: true },
    },
    {
      name: "program-needs-no-test-package",
      comment: "What runs in a clinic is a dependency; packages for tests are not.",
      severity: "error",
      from: { path: "^(app|lib)/", pathNot: "^lib/setup/" },
      to: { dependencyTypes: ["npm-dev", "npm-no-pkg", "npm-unknown"], dependencyTypesNot: ["type-only"] },
    },
    {
      name: "program-needs-no-test",
      severity: "error",
      from: { pathNot: "^tests/" },
      to: { path: "^tests/" },
    },
  ],
  options: {
    doNotFollow: { path: "node_modules|^lib/generated/" },
    exclude: { path: "^\\.next/" },
    tsConfig: { fileName: "tsconfig.json" },
    // Types draw arrows too.
    tsPreCompilationDeps: true,
    enhancedResolveOptions: {
      exportsFields: ["exports"],
      conditionNames: ["import", "require", "node", "default", "types"],
      extensions: [".ts", ".tsx", ".mjs", ".js", ".json", ".css", ".d.ts"],
    },
  },
};
