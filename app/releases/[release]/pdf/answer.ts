import { NextResponse } from "next/server";
import type { Actor } from "@/lib/access/actor";
import { currentActor } from "@/lib/access/session";
import { NotAllowed, NotFound } from "@/lib/records/refusals";
import { type Paper, papers } from "./paper";

/** The one way that a PDF goes out: who asks, on which paper, and what to say where there is none. */
export async function answerWithPdf(
  request: Request,
  make: (actor: Actor, paper: Paper) => Promise<{ name: string; pdf: Buffer }>,
): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return NextResponse.json({ error: "Sign in first." }, { status: 401 });
  const paper = new URL(request.url).searchParams.get("paper") ?? "a4";
  if (!isPaper(paper)) return NextResponse.json({ error: "The paper is a4 or letter." }, { status: 400 });
  try {
    const { name, pdf } = await make(actor, paper);
    return new Response(new Uint8Array(pdf), {
      headers: {
        "content-type": "application/pdf",
        "content-disposition": `inline; filename="${name.replace(/[^\w.-]/g, "_")}.pdf"`,
        "cache-control": "no-store",
      },
    });
  } catch (error) {
    if (error instanceof NotFound) return NextResponse.json({ error: error.tell }, { status: 404 });
    if (error instanceof NotAllowed) return NextResponse.json({ error: error.tell }, { status: 403 });
    throw error;
  }
}

const isPaper = (word: string): word is Paper => Object.keys(papers).includes(word);
