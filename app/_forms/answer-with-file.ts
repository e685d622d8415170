/** The thin way from an address to a file: who asks, what is made for them, and what to say where there is none. */
import { NextResponse } from "next/server";
import type { Actor } from "@/lib/access/actor";
import { currentActor } from "@/lib/access/session";
import { InputRefused, NotAllowed, NotFound } from "@/lib/records/refusals";

interface AnsweredFile {
  /** Signs that a file's name cannot have become _. */
  name: string;
  type: string;
  body: BodyInit;
  /** Shown by the browser where it can, instead of being kept as a file. */
  shown?: boolean;
}

export async function answerWithFile(make: (actor: Actor) => Promise<AnsweredFile>): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return NextResponse.json({ error: "Sign in first." }, { status: 401 });
  try {
    const { name, type, body, shown = false } = await make(actor);
    return new Response(body, {
      headers: {
        "content-type": type,
        "content-disposition": `${shown ? "inline" : "attachment"}; filename="${name.replace(/[^\w.-]/g, "_")}"`,
        "cache-control": "no-store",
      },
    });
  } catch (error) {
    if (error instanceof InputRefused)
      return NextResponse.json({ error: Object.values(error.fields).join(" "), fields: error.fields }, { status: 400 });
    if (error instanceof NotFound) return NextResponse.json({ error: error.tell }, { status: 404 });
    if (error instanceof NotAllowed) return NextResponse.json({ error: error.tell }, { status: 403 });
    throw error;
  }
}

export const jsonType = "application/json; charset=utf-8";
export const csvType = "text/csv; charset=utf-8";
