import { execFile } from "node:child_process";
import path from "node:path";
import { promisify } from "node:util";
import { expect, test } from "vitest";
import { closeDatabase } from "@/lib/records/database";
import { kept, tamper } from "./kept-record";

const root = path.resolve(import.meta.dirname, "../..");
async function command(...words: string[]) {
  const script = path.join(root, "lib/exchange/verify.ts");
  const run = promisify(execFile)(process.execPath, ["--import", "tsx", script, "--record", ...words], { cwd: root });
  return run.then(
    (ended) => ({ ...ended, code: 0 }),
    ({ stdout, stderr, code }: { stdout: string; stderr: string; code: number }) => ({ stdout, stderr, code }),
  );
}

test("the command says the same of a file with no server: 0 holds, 4 does not hold, 2 cannot be read", async () => {
  const clinic = await kept();
  await closeDatabase();
  expect(await command(clinic.file)).toMatchObject({
    code: 0,
    stdout: expect.stringContaining("holds: The chain holds over 8 entries"),
  });
  await tamper(clinic, (connection) => connection.exec("DELETE FROM TrailEntry WHERE position > 6"));
  expect(await command(clinic.file)).toMatchObject({
    code: 4,
    stdout: expect.stringContaining("DOES NOT HOLD: At 2026-10-08 09:00:00 UTC the chain ended with entry 8"),
  });
  expect(await command(path.join(path.dirname(clinic.file), "nothing.db"))).toMatchObject({
    code: 2,
    stderr: expect.stringContaining("The record cannot be read"),
  });
  expect(await command(path.join(root, "package.json"))).toMatchObject({ code: 2, stdout: "" });
}, 60_000);
