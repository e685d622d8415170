/** The command line: its exit status is what a script sees. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { assessCommand } from "@/lib/exchange/assess-command";
import { assessReadiness } from "@/lib/fit";
import { changed, fittingOf, markOf, readyBundle, trialOf } from "./ready-bundle";

const root = path.resolve(import.meta.dirname, "../..");
const folder = mkdtempSync(path.join(tmpdir(), "assess-"));
afterAll(() => rmSync(folder, { recursive: true }));

function file(name: string, content: unknown): string {
  const written = path.join(folder, name);
  writeFileSync(written, typeof content === "string" ? content : JSON.stringify(content));
  return written;
}

function assess(...args: string[]) {
  const { status, said, complained } = assessCommand(args);
  return { status, stdout: said, stderr: complained };
}

/** The same as a program of its own. */
function spawned(...args: string[]) {
  const { status, stdout, stderr } = spawnSync(process.execPath, ["--import", "tsx", "lib/exchange/assess.ts", ...args], {
    cwd: root,
    encoding: "utf8",
  });
  return { status, stdout, stderr };
}

describe("assess", () => {
  it("prints the assessment as JSON and exits 0 where the socket is ready", () => {
    const { status, stdout, stderr } = assess(file("ready.json", readyBundle()));
    expect({ status, stderr }).toEqual({ status: 0, stderr: "" });
    expect(spawned(file("ready.json", readyBundle()))).toEqual({ status, stdout, stderr });
    expect(spawned("no-such-file.json")).toEqual(assess("no-such-file.json"));
    expect(JSON.parse(stdout)).toEqual(JSON.parse(JSON.stringify(assessReadiness(readyBundle()))));
  });

  it.each([
    [
      "ready with conditions",
      0,
      changed((bundle) => {
        bundle.carried = [
          { id: "c", kind: "relief", aspect: "medial", third: "distal", amount: 1, unit: "mm", reason: "A little room" },
        ];
      }),
    ],
    [
      "not ready",
      3,
      changed((bundle) => {
        fittingOf(bundle).checks.seating = "not met";
      }),
    ],
    [
      "not enough evidence",
      3,
      changed((bundle) => {
        bundle.wearTrials = [];
      }),
    ],
    [
      "must not be released",
      4,
      changed((bundle) => {
        markOf(bundle, 1).broken = true;
      }),
    ],
  ])("exits by the decision: %s → %s", (decision, status, bundle) => {
    const result = assess(file("bundle.json", bundle));
    expect(result.status).toBe(status);
    expect(JSON.parse(result.stdout)).toMatchObject({ decision });
  });

  it("judges as of another instant", () => {
    const ready = file("ready.json", readyBundle());
    expect(assess(ready, "--as-of", "2026-12-01T00:00:00Z").status).toBe(3);
    expect(assess("--as-of=2026-10-09T00:00:00+01:00", ready).status).toBe(0);
  });

  it.each([
    ["a file that is not there", [path.join(folder, "nowhere.json")], "nowhere.json: cannot be read"],
    ["a folder", [folder], "cannot be read"],
    ["what is no JSON", [file("words.json", "{ready")], "words.json: not JSON"],
    ["an unknown field", [file("unknown.json", { ...readyBundle(), score: 10 })], "score: unknown field"],
    [
      "an unknown field deep inside",
      [
        file(
          "deep.json",
          changed((bundle) => {
            Object.assign(trialOf(bundle).plan, { load: 1 });
          }),
        ),
      ],
      "wearTrials[0].plan.load: unknown field",
    ],
    [
      "a value that cannot be",
      [
        file(
          "value.json",
          changed((bundle) => {
            bundle.episode.limbLengthMm = -1;
          }),
        ),
      ],
      "episode.limbLengthMm: ",
    ],
    ["JSON of something else", [file("list.json", [])], ""],
    ["a bad instant", [file("ready.json", readyBundle()), "--as-of", "tomorrow"], "--as-of: expected an instant"],
    ["an unknown option", [file("ready.json", readyBundle()), "--force"], "--force"],
    ["no file", [], "expected one file"],
    ["two files", [file("ready.json", readyBundle()), file("ready.json", readyBundle())], "expected one file"],
  ])("exits 2 and prints no assessment for %s", (_, args, reason) => {
    const { status, stdout, stderr } = assess(...args);
    expect({ status, stdout }).toEqual({ status: 2, stdout: "" });
    expect(stderr).toContain(reason);
    expect(stderr).not.toContain("    at ");
    expect(stderr.trim().split("\n")).toHaveLength(1);
  });
});
