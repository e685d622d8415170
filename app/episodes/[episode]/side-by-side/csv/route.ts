import { stringify } from "csv-stringify/sync";
import { answerWithFile, csvType } from "@/app/_forms/answer-with-file";
import { now } from "@/lib/records/clock";
import { InputRefused } from "@/lib/records/refusals";
import { exportSideBySide } from "@/lib/records/see-side-by-side";
import { asked } from "../address";
import { comparisonOf } from "../comparison";
import { csvColumns, csvLines } from "./rows";

/** The comparison of the address as a file for a spreadsheet. */
export const GET = (request: Request, { params }: { params: Promise<{ episode: string }> }): Promise<Response> =>
  answerWithFile(async (actor) => {
    const { searchParams } = new URL(request.url);
    const { socketIds, against } = asked({
      socket: searchParams.getAll("socket"),
      against: searchParams.get("against") ?? undefined,
    });
    const seen = await exportSideBySide(actor, { episodeId: (await params).episode, socketIds });
    const comparison = comparisonOf(seen, against);
    if (!comparison) throw new InputRefused({ socket: "Choose two to four sockets." });
    const numbers = comparison.sockets.map(({ number }) => number).join("-");
    return {
      name: `${seen.episode.wearer.clinicNumber}-sockets-${numbers}-${now().toISOString().slice(0, 10)}.csv`,
      type: csvType,
      // What someone wrote must not be run as a formula; a byte order mark, so that a spreadsheet reads the signs right.
      body: stringify(csvLines(comparison), { header: true, columns: [...csvColumns], escape_formulas: true, bom: true }),
    };
  });
