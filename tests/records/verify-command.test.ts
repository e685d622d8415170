import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { releaseSheetPdf } from "@/app/releases/[release]/pdf/sheet-pdf";
import { keysCommand } from "@/lib/exchange/keys-command";
import { verifyCommand } from "@/lib/exchange/verify-command";
import { database } from "@/lib/records/database";
import { seeRelease } from "@/lib/records/see-release";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { password } from "./clinic";
import { exportedText, publicKeysText, withSignedRelease } from "./signed-release";

const root = path.resolve(import.meta.dirname, "../..");

/** As on another machine: nothing but the program and the two files. */
function command(script: string, args: readonly string[], env: Record<string, string> = {}) {
  const found = spawnSync(process.execPath, ["--import", "tsx", script, ...args], {
    cwd: root,
    encoding: "utf8",
    env: { ...process.env, DATABASE_URL: "file:/nowhere/clinic.db", ...env },
  });
  return { status: found.status, said: found.stdout, complained: found.stderr };
}

const verify = (...args: string[]) => verifyCommand(args);

function fileWith(name: string, text: string | Buffer): string {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-verify-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(path.join(folder, name), text);
  return path.join(folder, name);
}

test("npm run verify: holds, and with one digit altered does not", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  const keys = fileWith("keys.json", publicKeysText());
  const text = await exportedText(signOffId);
  const whole = await verify(fileWith("whole.json", text), "--key", keys);
  // The same as a command of its own, on a machine that has no store.
  expect(command("lib/exchange/verify.ts", [fileWith("whole.json", text), "--key", keys])).toEqual(whole);
  expect(whole.said).toContain("The release holds.");
  expect(whole.said).toContain("signed by A Prosthetist");
  expect(whole.status).toBe(0);

  const altered = text.replace('"circumferenceMm":212.8', '"circumferenceMm":212.9');
  expect(altered).not.toBe(text);
  const bent = await verify(fileWith("bent.json", altered), "--key", keys);
  expect(bent.said).toContain("DOES NOT HOLD: The evidence was altered");
  expect(bent.said).toContain("DOES NOT HOLD: The evidence does not bear out its signature");
  expect(bent.said).toContain("The release does not hold.");
  expect(bent.status).toBe(4);

  const pretty = await verify(fileWith("pretty.json", JSON.stringify(JSON.parse(text), null, 2)), "--key", keys);
  expect(pretty.said).toContain("note: the file was written anew by another program");
  expect(pretty.status).toBe(0);

  expect((await verify(fileWith("whole.json", text))).status).toBe(3);

  await withdrawSignature(clinic.prosthetist, { signOffId, why: "the wrong model was poured", password });
  const withdrawn = await verify(fileWith("withdrawn.json", await exportedText(signOffId)), "--key", keys);
  expect(withdrawn.said).toMatch(/WITHDRAWN .*the wrong model was poured/);
}, 60_000);

test("npm run verify: the PDF of a sheet, and one byte of it altered, its seal taken off or put on another", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  const keys = fileWith("keys.json", publicKeysText());
  const pdfOf = async () => releaseSheetPdf(await seeRelease(clinic.technician, signOffId), null, "a4");
  const [pdf, other] = [await pdfOf(), await pdfOf()];
  const verified = (bytes: Buffer) => verify(fileWith("sheet.pdf", bytes), "--key", keys);
  expect(await verified(pdf)).toMatchObject({ status: 0, said: expect.stringContaining("The sheet holds.") });
  expect((await verify(fileWith("sheet.pdf", pdf))).status).toBe(3);

  const bent = Buffer.from(pdf);
  const at = Math.floor(pdf.length / 2);
  bent[at] = (bent[at] ?? 0) ^ 1;
  expect(await verified(bent)).toMatchObject({
    status: 4,
    said: expect.stringContaining("The file was changed after it was sealed."),
  });
  const end = pdf.lastIndexOf("\n%fitting-sheet");
  expect(await verified(pdf.subarray(0, end))).toMatchObject({ status: 4, said: expect.stringContaining("no seal") });
  const swapped = Buffer.concat([Buffer.from("%PDF-1.7\n another file"), other.subarray(other.lastIndexOf("\n%fitting-sheet"))]);
  expect((await verified(swapped)).status).toBe(4);
});

test("npm run verify: bad input says which file and why", async () => {
  const { signOffId } = await withSignedRelease();
  const release = fileWith("release.json", await exportedText(signOffId));
  for (const [args, why] of [
    [[], "Usage"],
    [[release, release], "Usage"],
    [["/nowhere/release.json"], "/nowhere/release.json: cannot be read"],
    [[fileWith("text.json", "not JSON")], "text.json"],
    [[fileWith("other.json", '{"format":"something"}')], "format"],
    [[release, "--key", fileWith("keys.json", '{"keys":[]}')], "keys.json: keys"],
  ] as const) {
    const found = await verify(...args);
    expect(found.complained).toContain(why);
    expect(found.status).toBe(2);
  }
});

test("npm run keys: public ones for giving out, without the private half; rotated ones are kept", async () => {
  const { clinic } = await withSignedRelease();
  const keys = (...args: string[]) => keysCommand(args);
  const publicOnes = await keys("public");
  // The same as a command of its own.
  expect(command("lib/exchange/keys.ts", ["public"], { DATABASE_URL: `file:${clinic.file}` })).toEqual(publicOnes);
  const before = JSON.parse(publicOnes.said) as { keys: { kid: string }[] };
  expect(before.keys).toHaveLength(1);
  expect(JSON.stringify(before)).not.toContain('"d"');
  expect((await keys("rotate")).status).toBe(0);
  const after = JSON.parse((await keys("public")).said) as { keys: { kid: string }[] };
  expect(after.keys).toHaveLength(2);
  expect(after.keys[1]?.kid).toBe(before.keys[0]?.kid);
  const { actorName, recordId } = await (await database()).trailEntry.findFirstOrThrow({
    where: { action: "made a new key to sign with" },
  });
  expect([actorName, recordId]).toEqual(["whoever runs the server", after.keys[0]?.kid]);
  expect((await keys()).complained).toContain("Usage");
  process.env.DATABASE_URL = "file:/nowhere/clinic.db";
  expect((await keys("public")).complained).toContain("There is no database");
}, 60_000);
