import { stringify } from "csv-stringify/sync";
import { NextResponse } from "next/server";
import { currentActor } from "@/lib/access/session";
import { now } from "@/lib/records/clock";
import { NotAllowed, NotFound } from "@/lib/records/refusals";
import { exportSideBySide } from "@/lib/records/see-side-by-side";
import { asked } from "../address";
import { comparisonOf } from "../comparison";
import { csvColumns, csvLines } from "./rows";

/** The comparison of the address as a file for a spreadsheet. */
export async function GET(request: Request, { params }: { params: Promise<{ episode: string }> }): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return NextResponse.json({ error: "Sign in first." }, { status: 401 });
  const { searchParams } = new URL(request.url);
  const { socketIds, against } = asked({
    socket: searchParams.getAll("socket"),
    against: searchParams.get("against") ?? undefined,
  });
  try {
    const seen = await exportSideBySide(actor, { episodeId: (await params).episode, socketIds });
    const comparison = comparisonOf(seen, against);
    if (!comparison) return NextResponse.json({ error: "Choose two to four sockets." }, { status: 400 });
    const numbers = comparison.sockets.map(({ number }) => number).join("-");
    const name = `${seen.episode.wearer.clinicNumber.replace(/[^\w-]/g, "_")}-sockets-${numbers}-${now().toISOString().slice(0, 10)}.csv`;
    // What someone wrote must not be run as a formula; a byte order mark, so that a spreadsheet reads the signs right.
    const text = stringify(csvLines(comparison), { header: true, columns: [...csvColumns], escape_formulas: true, bom: true });
    return new Response(text, {
      headers: {
        "content-type": "text/csv; charset=utf-8",
        "content-disposition": `attachment; filename="${name}"`,
        "cache-control": "no-store",
      },
    });
  } catch (error) {
    if (error instanceof NotFound) return NextResponse.json({ error: error.tell }, { status: 404 });
    if (error instanceof NotAllowed) return NextResponse.json({ error: error.tell }, { status: 403 });
    throw error;
  }
}
