import { execFile } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, readFileSync, rmSync } from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import path from "node:path";
import { describe, expect, onTestFinished, test } from "vitest";
import { noonOf } from "@/prisma/invented-clinic/calendar";
import { outcomesOnPaper } from "../stories/tellings";

const root = path.resolve(import.meta.dirname, "../..");

test("a port in use is named, with how to choose another", async () => {
  const port = await heldPort();
  const { code, errors } = await run("lib/setup/demo.mjs", { PORT: String(port) });
  expect(code).toBe(1);
  expect(errors).toContain(`Port ${port} is in use by another program.`);
  expect(errors).toContain(`PORT=${port + 1} npm run demo`);
});

test.each(["harbour", "0", "70000", "31.5"])("PORT=%s is refused", async (port) => {
  const { code, errors } = await run("lib/setup/start.mjs", { PORT: port });
  expect(code).toBe(1);
  expect(errors).toContain(`PORT is "${port}", which is not a port.`);
});

test("a HOST that is no address of this machine is refused", async () => {
  const { code, errors } = await run("lib/setup/start.mjs", { HOST: "192.0.2.1" });
  expect(code).toBe(1);
  expect(errors).toContain('HOST is "192.0.2.1", which is no address of this machine.');
});

test.each(["demo", "start", "test"])("npm run %s on a Node that is too old says which one is needed", async (command) => {
  const olderNode = 'Object.defineProperty(process, "versions", { value: { ...process.versions, node: "20.18.3" } })';
  const { code, errors } = await run(`lib/setup/${command}.mjs`, {
    NODE_OPTIONS: `--import "data:text/javascript,${encodeURIComponent(olderNode)}"`,
  });
  expect(code).toBe(1);
  expect(errors).toContain("needs Node 20.19 or newer");
  expect(errors).toContain("This is Node 20.18.3.");
});

test("npm test without the browser that was named says how to get one, and counts it as failed", async () => {
  const { code, said, errors } = await run("lib/setup/test.mjs", { CHROMIUM: "/nowhere/chromium" });
  expect(code).toBe(1);
  expect(errors).toContain("There is no browser at /nowhere/chromium.");
  expect(said.trimEnd().split("\n").at(-1)).toBe("0 passed, 1 failed");
});

describe("npm run invent", () => {
  const invent = (...words: string[]) => run("lib/setup/invent.mjs", {}, words);

  test("makes the store as of a day, prints one line of JSON, and never writes into a file that exists", async () => {
    const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-invent-"));
    onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
    const file = path.join(folder, "invented.db");
    const { code, said } = await invent("--today", "2027-02-28", "--to", file);
    expect(code).toBe(0);
    expect(said.trimEnd().split("\n")).toHaveLength(1);
    expect(JSON.parse(said)).toEqual({ episodes: outcomesOnPaper(noonOf("2027-02-28")) });
    expect(Object.keys(JSON.parse(said).episodes[0])).toEqual(["number", "level", "stage", "nextStep", "decision"]);

    const before = readFileSync(file);
    const again = await invent("--today", "2027-02-28", "--to", file);
    expect([again.code, again.said]).toEqual([2, ""]);
    expect(again.errors).toContain(`${file} exists already; nothing was changed.`);
    expect(readFileSync(file).equals(before)).toBe(true);
  });

  test.each([
    [["--today", "2027-02-30", "--to", "/tmp/none.db"], '"2027-02-30" is no day of the calendar.'],
    [["--today", "tomorrow", "--to", "/tmp/none.db"], '"tomorrow" is no day of the calendar.'],
    [["--today", "2027-02-28"], "Say the day and the file."],
    [["--to", "/tmp/none.db"], "Say the day and the file."],
    [["--yesterday"], "Say the day and the file."],
    [["--today", "2027-02-28", "--to", "/nowhere/at/all.db"], "There is no folder /nowhere/at."],
  ])("%j is bad input", async (words, why) => {
    const { code, said, errors } = await invent(...words);
    expect([code, said]).toEqual([2, ""]);
    expect(errors).toContain(why);
  });
});

async function heldPort(): Promise<number> {
  const server = createServer().listen(0, "127.0.0.1");
  await once(server, "listening");
  onTestFinished(() => {
    server.close();
  });
  const address = server.address();
  if (address === null || typeof address === "string") throw new Error("a TCP server has a port");
  return address.port;
}

/** Runs one of the commands; whatever it says must be sentences, never a stack. */
async function run(
  file: string,
  env: Record<string, string>,
  words: readonly string[] = [],
): Promise<{ code: number; said: string; errors: string }> {
  const result = await new Promise<{ code: number; said: string; errors: string }>((resolve) => {
    execFile(process.execPath, [path.join(root, file), ...words], { env: { ...process.env, ...env } }, (error, said, errors) => {
      resolve({ code: typeof error?.code === "number" ? error.code : 0, said, errors });
    });
  });
  expect(result.errors).not.toMatch(/^\s+at /m);
  return result;
}
