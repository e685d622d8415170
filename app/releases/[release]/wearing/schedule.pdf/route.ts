import { seeWearing } from "@/lib/records/see-after-release";
import { answerWithPdf } from "../../pdf/answer";
import { wearSchedulePdf } from "../../pdf/wearing-pdf";

/** The wear schedule as the wearer takes it home. `?paper=letter` where A4 is not at hand. */
export const GET = (request: Request, { params }: { params: Promise<{ release: string }> }): Promise<Response> =>
  answerWithPdf(request, async (actor, paper) => {
    const seen = await seeWearing(actor, (await params).release);
    return { name: `${seen.signOff.episode.wearer.clinicNumber}-wear-schedule`, pdf: await wearSchedulePdf(seen, paper) };
  });
