import { clinicSettings } from "@/lib/records/clinic";
import { seeRelease } from "@/lib/records/see-release";
import { answerWithPdf } from "../pdf/answer";
import { releaseSheetPdf } from "../pdf/sheet-pdf";

/** The release sheet for the bench. `?paper=letter` where A4 is not at hand. */
export const GET = (request: Request, { params }: { params: Promise<{ release: string }> }): Promise<Response> =>
  answerWithPdf(request, async (actor, paper) => {
    const seen = await seeRelease(actor, (await params).release);
    const { bench } = seen.evidence;
    return {
      name: `${bench.clinicNumber}-socket-${seen.signOff.socket.number}-release`,
      pdf: await releaseSheetPdf(seen, await clinicSettings(), paper),
    };
  });
