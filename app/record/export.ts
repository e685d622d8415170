/** What was looked for in the record, as a file that is sent page by page. */
import { NextResponse } from "next/server";
import { currentActor } from "@/lib/access/session";
import { now } from "@/lib/records/clock";
import { type ExportedEntry, exportRecord } from "@/lib/records/export-record";
import { InputRefused, NotAllowed } from "@/lib/records/refusals";
import { asked } from "./address";

interface Kind {
  ending: "csv" | "jsonl";
  type: string;
  /** What stands before the first entry. */
  begin: string;
  text: (entries: readonly ExportedEntry[]) => string;
}

export async function exportAs({ ending, type, begin, text }: Kind, request: Request): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return NextResponse.json({ error: "Sign in first." }, { status: 401 });
  try {
    const { pages } = await exportRecord(actor, asked(Object.fromEntries(new URL(request.url).searchParams)));
    return new Response(streamOf(pages, { begin, text }), {
      headers: {
        "content-type": `${type}; charset=utf-8`,
        "content-disposition": `attachment; filename="record-${now().toISOString().slice(0, 10)}.${ending}"`,
        "cache-control": "no-store",
      },
    });
  } catch (error) {
    if (error instanceof InputRefused)
      return NextResponse.json({ error: Object.values(error.fields).join(" "), fields: error.fields }, { status: 400 });
    if (error instanceof NotAllowed) return NextResponse.json({ error: error.tell }, { status: 403 });
    throw error;
  }
}

function streamOf(pages: AsyncGenerator<ExportedEntry[]>, { begin, text }: Pick<Kind, "begin" | "text">): ReadableStream {
  const bytes = new TextEncoder();
  return new ReadableStream({
    start: (controller) => controller.enqueue(bytes.encode(begin)),
    async pull(controller) {
      const { done, value } = await pages.next();
      if (done) controller.close();
      else controller.enqueue(bytes.encode(text(value)));
    },
    cancel: () => void pages.return(undefined),
  });
}
