import { answerWithFile, jsonType } from "@/app/_forms/answer-with-file";
import { writeBundle } from "@/lib/exchange/bundle-file";
import { exportBundle } from "@/lib/records/see-episode";

/** One episode as a file that `npm run assess` judges as the page does. */
export const GET = (_request: Request, { params }: { params: Promise<{ episode: string }> }): Promise<Response> =>
  answerWithFile(async (actor) => {
    const { bundle, episode } = await exportBundle(actor, (await params).episode);
    return {
      name: `${episode.wearer.clinicNumber}-${bundle.asOf.slice(0, 10)}.json`,
      type: jsonType,
      body: writeBundle(bundle),
    };
  });
