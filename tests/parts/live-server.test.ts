import { afterEach, expect, test, vi } from "vitest";
import { fetchTrial, hearChanges } from "@/app/live/_device/server";

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** A line that opens, says what it is told to, and is never closed from the other side. */
function openLine() {
  const lines: ReadableStreamDefaultController<Uint8Array>[] = [];
  vi.stubGlobal("fetch", async (_path: string, { signal }: RequestInit) => {
    const body = new ReadableStream<Uint8Array>({
      start: (controller) => {
        lines.push(controller);
        signal?.addEventListener("abort", () => controller.error(new DOMException("aborted", "AbortError")));
      },
    });
    return new Response(body);
  });
  return { lines, say: (text: string) => lines.at(-1)?.enqueue(new TextEncoder().encode(text)) };
}

test("a line that fell silent without being closed is given up and opened anew, and that is told", async () => {
  vi.useFakeTimers();
  const { lines, say } = openLine();
  const ends = new AbortController();
  const heard: string[] = [];
  const hearing = hearChanges("trial", {
    pass: undefined,
    signal: ends.signal,
    changed: () => heard.push("changed"),
    hears: (isHeard) => heard.push(isHeard ? "in touch" : "not in touch"),
  });
  await vi.advanceTimersByTimeAsync(1_000);
  expect(heard.splice(0)).toEqual(["in touch", "changed"]);
  // Heartbeats keep it open, however long nothing happens.
  for (let beat = 0; beat < 6; beat += 1) {
    say(": still here\n\n");
    await vi.advanceTimersByTimeAsync(15_000);
  }
  say("event: changed\ndata: \n\n");
  await vi.advanceTimersByTimeAsync(10);
  expect(heard.splice(0)).toEqual(["changed"]);
  expect(lines).toHaveLength(1);

  await vi.advanceTimersByTimeAsync(46_000);
  expect(lines).toHaveLength(2);
  expect(heard.splice(0)).toEqual(["not in touch", "in touch", "changed"]);
  ends.abort();
  await vi.advanceTimersByTimeAsync(6_000);
  await hearing;
  expect(lines).toHaveLength(2);
});

test("an answer that was cut off on its way is no answer", async () => {
  vi.stubGlobal("fetch", async () => new Response('{"trialId": "a", "serverNow": "2026-'));
  expect(await fetchTrial("a")).toMatchObject({ failed: "offline" });
});

test("a server that is busy is asked again; one that does not know who asks, or will never take it, is told apart", async () => {
  for (const [status, failed] of [
    [503, "offline"],
    [401, "signed out"],
    [404, "refused"],
  ] as const) {
    vi.stubGlobal("fetch", async () => Response.json({ error: "why" }, { status }));
    expect(await fetchTrial("a")).toEqual({ failed, why: "why" });
  }
});
