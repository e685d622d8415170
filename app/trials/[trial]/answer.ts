import { NextResponse } from "next/server";
import type { Actor } from "@/lib/access/actor";
import { actorOfRequest, passOf } from "@/lib/access/actor-of-request";
import { InputRefused, NotAllowed, NotFound } from "@/lib/records/refusals";

/** Larger than any batch that a device sends. */
const mostBytes = 1_000_000;

export const told = (error: string, status: number) => NextResponse.json({ error }, { status });

const signInFirst = "Sign in first. What was pressed stays on the device.";
const linkIsOver = "This link is over. What was pressed stays on the device; ask your clinic for a new link.";

/** What a device asks of a trial: who asks, what is refused, and an answer that nobody keeps on the way. */
export async function answerDevice(request: Request, answer: (actor: Actor) => Promise<object>): Promise<Response> {
  const actor = await actorOfRequest(request);
  if (!actor) return told(passOf(request) === null ? signInFirst : linkIsOver, 401);
  try {
    return NextResponse.json(await answer(actor), { headers: { "cache-control": "no-store" } });
  } catch (error) {
    if (error instanceof TooMuch) return told("Too much at once: send fewer events.", 413);
    if (error instanceof NoBatch) return told("This is no batch of events.", 400);
    if (error instanceof InputRefused) return NextResponse.json({ error: error.tell, fields: error.fields }, { status: 400 });
    if (error instanceof NotFound) return told(error.tell, 404);
    if (error instanceof NotAllowed) return told(error.tell, 403);
    throw error;
  }
}

class TooMuch extends Error {}
class NoBatch extends Error {}

/** @throws what `answerDevice` answers to */
export async function sentBy(request: Request): Promise<object> {
  const text = await request.text();
  if (text.length > mostBytes) throw new TooMuch();
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value === "object" && value !== null && !Array.isArray(value)) return value;
  } catch {
    // Not even JSON.
  }
  throw new NoBatch();
}
