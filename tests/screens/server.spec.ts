import { spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { freePort } from "../../lib/setup/server.mjs";
import { expect, test } from "./clinic";

test.use({ signedInAs: "nobody" });

test("every page keeps out foreign scripts, frames and onlookers", async ({ request }) => {
  const headers = (await request.get("/sign-in")).headers();
  expect(headers["content-security-policy"]).toContain("default-src 'self'");
  expect(headers["content-security-policy"]).toContain("frame-ancestors 'none'");
  expect(headers).toMatchObject({
    "x-frame-options": "DENY",
    "x-content-type-options": "nosniff",
    "referrer-policy": "same-origin",
  });
  expect(headers).not.toHaveProperty("x-powered-by");
});

test("pages run under these rules: nothing of our own is refused", async ({ page }) => {
  const refused: string[] = [];
  page.on("console", (message) => {
    if (/Content Security Policy/.test(message.text())) refused.push(message.text());
  });
  await page.goto("/sign-in");
  await expect(page.getByLabel("Password")).toBeVisible();
  expect(refused).toEqual([]);
});

for (const signal of ["SIGTERM", "SIGINT"] as const) {
  test(
    `npm start serves an empty clinic, and ${signal} ends it cleanly`,
    signal === "SIGINT" ? { tag: "@slow" } : {},
    async ({ request }) => {
      const folder = mkdtempSync(path.join(tmpdir(), "fitting-ledger-start-"));
      const port = await freePort();
      const address = `http://localhost:${port}`;
      const server = spawn(process.execPath, ["lib/setup/start.mjs"], {
        env: {
          ...process.env,
          PORT: String(port),
          DATABASE_URL: `file:${folder}/clinic.db`,
          BETTER_AUTH_SECRET: "of this test only",
        },
        stdio: ["ignore", "pipe", "inherit"],
      });
      let said = "";
      server.stdout.on("data", (chunk) => {
        said += chunk;
      });

      await expect.poll(() => said, { timeout: 30_000 }).toContain(`Open ${address}`);
      expect(said).toContain("the first page makes the first administrator");
      expect((await request.get(address)).ok()).toBe(true);

      server.kill(signal);
      expect(await once(server, "exit")).toEqual([0, null]);
      await expect(request.get(address)).rejects.toThrow(/ECONNREFUSED/);
      rmSync(folder, { recursive: true, force: true });
    },
  );
}
