import { NextResponse } from "next/server";
import { currentActor } from "@/lib/access/session";
import { writeBundle } from "@/lib/exchange/bundle-file";
import { NotAllowed, NotFound } from "@/lib/records/refusals";
import { exportBundle } from "@/lib/records/see-episode";

/** One episode as a file that `npm run assess` judges as the page does. */
export async function GET(_request: Request, { params }: { params: Promise<{ episode: string }> }): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return NextResponse.json({ error: "Sign in first." }, { status: 401 });
  try {
    const { bundle, episode } = await exportBundle(actor, (await params).episode);
    return new Response(writeBundle(bundle), {
      headers: {
        "content-type": "application/json; charset=utf-8",
        "content-disposition": `attachment; filename="${episode.wearer.clinicNumber.replace(/[^\w-]/g, "_")}-${bundle.asOf.slice(0, 10)}.json"`,
        "cache-control": "no-store",
      },
    });
  } catch (error) {
    if (error instanceof NotFound) return NextResponse.json({ error: error.tell }, { status: 404 });
    if (error instanceof NotAllowed) return NextResponse.json({ error: error.tell }, { status: 403 });
    throw error;
  }
}
