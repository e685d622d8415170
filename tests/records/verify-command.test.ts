import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { expect, onTestFinished, test } from "vitest";
import { withdrawSignature } from "@/lib/records/withdraw-signature";
import { password } from "./clinic";
import { exportedText, publicKeysText, withSignedRelease } from "./signed-release";

const root = path.resolve(import.meta.dirname, "../..");

/** As on another machine: nothing but the program and the two files. */
function command(script: string, args: readonly string[], env: Record<string, string> = {}) {
  const found = spawnSync(process.execPath, [path.join(root, "node_modules/tsx/dist/cli.mjs"), script, ...args], {
    cwd: root,
    encoding: "utf8",
    env: { ...process.env, DATABASE_URL: "file:/nowhere/clinic.db", ...env },
  });
  return { status: found.status, said: found.stdout, complained: found.stderr };
}

const verify = (...args: string[]) => command("lib/exchange/verify.ts", args);

function fileWith(name: string, text: string): string {
  const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-verify-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  writeFileSync(path.join(folder, name), text);
  return path.join(folder, name);
}

test("npm run verify: holds, and with one digit altered does not", async () => {
  const { clinic, signOffId } = await withSignedRelease();
  const keys = fileWith("keys.json", publicKeysText());
  const text = await exportedText(signOffId);
  const whole = verify(fileWith("whole.json", text), "--key", keys);
  expect(whole.said).toContain("The release holds.");
  expect(whole.said).toContain("signed by A Prosthetist");
  expect(whole.status).toBe(0);

  const altered = text.replace('"circumferenceMm":212.8', '"circumferenceMm":212.9');
  expect(altered).not.toBe(text);
  const bent = verify(fileWith("bent.json", altered), "--key", keys);
  expect(bent.said).toContain("DOES NOT HOLD: The evidence was altered");
  expect(bent.said).toContain("DOES NOT HOLD: The evidence does not bear out its signature");
  expect(bent.said).toContain("The release does not hold.");
  expect(bent.status).toBe(4);

  const pretty = verify(fileWith("pretty.json", JSON.stringify(JSON.parse(text), null, 2)), "--key", keys);
  expect(pretty.said).toContain("note: the file was written anew by another program");
  expect(pretty.status).toBe(0);

  expect(verify(fileWith("whole.json", text)).status).toBe(3);

  await withdrawSignature(clinic.prosthetist, { signOffId, why: "the wrong model was poured", password });
  const withdrawn = verify(fileWith("withdrawn.json", await exportedText(signOffId)), "--key", keys);
  expect(withdrawn.said).toMatch(/WITHDRAWN .*the wrong model was poured/);
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
    const found = verify(...args);
    expect(found.complained).toContain(why);
    expect(found.status).toBe(2);
  }
});

test("npm run keys: public ones for giving out, without the private half; rotated ones are kept", async () => {
  const { clinic } = await withSignedRelease();
  const env = { DATABASE_URL: `file:${clinic.file}` };
  const keys = (...args: string[]) => command("lib/exchange/keys.ts", args, env);
  const before = JSON.parse(keys("public").said) as { keys: { kid: string }[] };
  expect(before.keys).toHaveLength(1);
  expect(JSON.stringify(before)).not.toContain('"d"');
  expect(keys("rotate").status).toBe(0);
  const after = JSON.parse(keys("public").said) as { keys: { kid: string }[] };
  expect(after.keys).toHaveLength(2);
  expect(after.keys[1]?.kid).toBe(before.keys[0]?.kid);
  expect(keys().complained).toContain("Usage");
  expect(command("lib/exchange/keys.ts", ["public"]).complained).toContain("There is no database");
});
