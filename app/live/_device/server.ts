/** The few things that a device says to the server and hears from it. */
import type { TrialEvent } from "@/lib/fit/bundle";
import type { Became, LiveTrial, SentLook } from "./live-trial";

/** "offline": nobody was reached. "signed out": who asks is not known there any more. "refused": it will never be taken so. */
export type Told<Answer> = { answer: Answer } | { failed: "offline" | "signed out" | "refused"; why: string };

const patienceMs = 15_000;

async function ask<Answer>(path: string, pass: string | undefined, body?: unknown): Promise<Told<Answer>> {
  try {
    const response = await fetch(path, {
      ...(body === undefined ? {} : { method: "POST", body: JSON.stringify(body) }),
      headers: {
        ...(body === undefined ? {} : { "content-type": "application/json" }),
        ...(pass === undefined ? {} : { authorization: `Bearer ${pass}` }),
      },
      cache: "no-store",
      signal: AbortSignal.timeout(patienceMs),
    });
    // An answer that was cut off on its way is no answer: it throws here.
    if (response.ok) return { answer: (await response.json()) as Answer }; // our own routes answer so
    const said: unknown = await response.json().catch(() => ({}));
    const why = typeof said === "object" && said !== null && "error" in said ? String(said.error) : response.statusText;
    if (response.status === 401) return { failed: "signed out", why };
    // A server that is starting, busy or broken is asked again later.
    if (response.status >= 500 || response.status === 408 || response.status === 429) return { failed: "offline", why };
    return { failed: "refused", why };
  } catch (error) {
    return { failed: "offline", why: error instanceof Error ? error.message : "" };
  }
}

export const fetchTrial = (trialId: string, pass?: string): Promise<Told<LiveTrial>> =>
  ask(`/trials/${encodeURIComponent(trialId)}/live`, pass);

export const sendEvents = (
  trialId: string,
  pass: string | undefined,
  batch: { sentAt: string; events: readonly TrialEvent[] },
): Promise<Told<{ received: Became[] }>> => ask(`/trials/${encodeURIComponent(trialId)}/events`, pass, batch);

export const sendLook = (
  trialId: string,
  pass: string | undefined,
  look: { sentAt: string; look: SentLook },
): Promise<Told<{ received: Became[] }>> => ask(`/trials/${encodeURIComponent(trialId)}/looks`, pass, look);

export const openLink = (token: string, birthYear: string): Promise<Told<{ pass: string; trialId: string }>> =>
  ask("/own/open", undefined, { token, birthYear });

/** The server says every 15 seconds that it is still there: a line that is silent for so long is dead, though nobody closed it. */
const silenceMs = 40_000;

/**
 * Calls back whenever the record of this trial changed on the server, until the signal says to stop. Comes back by itself,
 * and says whether it hears the server.
 */
export async function hearChanges(
  trialId: string,
  {
    pass,
    signal: ends,
    changed,
    hears,
  }: { pass: string | undefined; signal: AbortSignal; changed: () => void; hears: (isHeard: boolean) => void },
): Promise<void> {
  while (!ends.aborted) {
    const silence = new AbortController();
    let timer = setTimeout(() => silence.abort(), silenceMs);
    const { signal } = silence;
    const end = () => silence.abort();
    ends.addEventListener("abort", end);
    try {
      const response = await fetch(`/trials/${encodeURIComponent(trialId)}/changes`, {
        headers: { accept: "text/event-stream", ...(pass === undefined ? {} : { authorization: `Bearer ${pass}` }) },
        cache: "no-store",
        signal,
      });
      if (!response.ok || !response.body) throw new Error(response.statusText);
      hears(true);
      changed();
      const reader = response.body.pipeThrough(new TextDecoderStream()).getReader();
      for (let piece = await reader.read(); !piece.done; piece = await reader.read()) {
        clearTimeout(timer);
        timer = setTimeout(() => silence.abort(), silenceMs);
        if (piece.value.includes("event: changed")) changed();
      }
    } catch {
      // Nobody was reached, or the line broke or fell silent: tried again below.
    }
    clearTimeout(timer);
    ends.removeEventListener("abort", end);
    if (!ends.aborted) hears(false);
    await new Promise((done) => setTimeout(done, 5_000));
  }
}
