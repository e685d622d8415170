// @ts-check
// The live trial is a program of its own, outside Next: it runs without a network, and it is small.
import { createHash } from "node:crypto";
import { mkdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { root } from "./environment.mjs";

const device = "app/live/_device";

/** Writes scripts, styles, type and the two pages to `.next/live`, all under names that change with what is in them. */
export async function buildLiveApp() {
  const { build } = await import("esbuild");
  const outdir = path.join(root, ".next/live");
  rmSync(outdir, { recursive: true, force: true });
  mkdirSync(outdir, { recursive: true });
  /** @type {import("esbuild").BuildOptions} */
  const common = {
    absWorkingDir: root,
    bundle: true,
    minify: true,
    format: "esm",
    jsx: "automatic",
    target: "es2022",
    define: { "process.env.NODE_ENV": '"production"' },
    legalComments: "none",
    logLevel: "error",
  };
  const { metafile } = await build({
    ...common,
    entryPoints: { app: `${device}/main.tsx` },
    outdir,
    entryNames: "[name]-[hash]",
    assetNames: "[name]-[hash]",
    loader: { ".woff2": "file" },
    publicPath: "/live/",
    metafile: true,
  });
  const files = Object.keys(metafile?.outputs ?? {}).map((file) => path.basename(file));
  const [script, style] = [".js", ".css"].map((end) => files.find((file) => file.endsWith(end)));
  const page = [
    '<!doctype html><html lang="en"><head><meta charset="utf-8">',
    '<meta name="viewport" content="width=device-width, initial-scale=1"><meta name="robots" content="noindex">',
    `<title>Wear trial · Fitting Ledger</title><link rel="stylesheet" href="/live/${style}"></head>`,
    '<body><div id="live"></div><noscript><p>A live wear trial needs JavaScript. Without it, write down what happens',
    ` with its times, and enter it afterwards.</p></noscript><script type="module" src="/live/${script}"></script></body></html>`,
  ].join("\n");
  for (const name of ["trial", "own"]) writeFileSync(path.join(outdir, `${name}.html`), page);

  // Latin letters only: others are fetched when they are met, and have a fallback.
  const kept = files.filter((file) => !file.endsWith(".woff2") || /-latin-wght/.test(file)).sort();
  const version = createHash("sha256").update(page).update(kept.join()).digest("hex").slice(0, 16);
  await build({
    ...common,
    entryPoints: { worker: `${device}/worker.ts` },
    outdir,
    format: "iife",
    define: {
      ...common.define,
      liveFiles: JSON.stringify(["/live/trial", "/live/own", ...kept.map((file) => `/live/${file}`)]),
      liveVersion: JSON.stringify(version),
    },
  });
}
