/** What was looked for in the record, as a file that is sent page by page. */
import { answerWithFile } from "@/app/_forms/answer-with-file";
import { now } from "@/lib/records/clock";
import { type ExportedEntry, exportRecord } from "@/lib/records/export-record";
import { asked } from "./address";

interface Kind {
  ending: "csv" | "jsonl";
  type: string;
  /** What stands before the first entry. */
  begin: string;
  text: (entries: readonly ExportedEntry[]) => string;
}

export const exportAs = ({ ending, type, begin, text }: Kind, request: Request): Promise<Response> =>
  answerWithFile(async (actor) => {
    const { pages } = await exportRecord(actor, asked(Object.fromEntries(new URL(request.url).searchParams)));
    return {
      name: `record-${now().toISOString().slice(0, 10)}.${ending}`,
      type: `${type}; charset=utf-8`,
      body: streamOf(pages, { begin, text }),
    };
  });

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
