import { NextResponse } from "next/server";
import { currentActor } from "@/lib/access/session";
import { releaseFileText } from "@/lib/exchange/release-file";
import { NotAllowed, NotFound } from "@/lib/records/refusals";
import { exportRelease } from "@/lib/records/see-release";

/** A signed release with all of its evidence, as a file that `npm run verify` checks without this program's records. */
export async function GET(_request: Request, { params }: { params: Promise<{ release: string }> }): Promise<Response> {
  const actor = await currentActor();
  if (!actor) return NextResponse.json({ error: "Sign in first." }, { status: 401 });
  try {
    const { signOff, evidence } = await exportRelease(actor, (await params).release);
    const name = `${evidence.bench.clinicNumber.replace(/[^\w-]/g, "_")}-socket-${signOff.socket.number}-${evidence.at.slice(0, 10)}`;
    return new Response(releaseFileText(signOff), {
      headers: {
        "content-type": "application/json; charset=utf-8",
        "content-disposition": `attachment; filename="${name}.release.json"`,
        "cache-control": "no-store",
      },
    });
  } catch (error) {
    if (error instanceof NotFound) return NextResponse.json({ error: error.tell }, { status: 404 });
    if (error instanceof NotAllowed) return NextResponse.json({ error: error.tell }, { status: 403 });
    throw error;
  }
}
