import { NextResponse } from "next/server";
import { currentActor } from "@/lib/access/session";
import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { InputRefused, NotAllowed, NotFound } from "@/lib/records/refusals";

/** Larger than any batch that a device sends. */
const mostBytes = 1_000_000;

/**
 * What a device kept of this trial: `{ sentAt, events }`. The answer says of each event what became of it; the device
 * forgets an event only then.
 */
export async function POST(request: Request, { params }: { params: Promise<{ trial: string }> }): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return told("Sign in first. What was sent stays on the device.", 401);
  const text = await request.text();
  if (text.length > mostBytes) return told("Too much at once: send fewer events.", 413);
  const sent = readJson(text);
  if (!sent) return told("This is no batch of events.", 400);
  try {
    const { received } = await receiveTrialEvents(actor, { ...sent, trialId: (await params).trial });
    return NextResponse.json({ received }, { headers: { "cache-control": "no-store" } });
  } catch (error) {
    if (error instanceof InputRefused) return NextResponse.json({ error: error.tell, fields: error.fields }, { status: 400 });
    if (error instanceof NotFound) return told(error.tell, 404);
    if (error instanceof NotAllowed) return told(error.tell, 403);
    throw error;
  }
}

const told = (error: string, status: number) => NextResponse.json({ error }, { status });

function readJson(text: string): object | null {
  try {
    const value: unknown = JSON.parse(text);
    return typeof value === "object" && value !== null && !Array.isArray(value) ? value : null;
  } catch {
    return null;
  }
}
