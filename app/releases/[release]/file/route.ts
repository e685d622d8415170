import { answerWithFile, jsonType } from "@/app/_forms/answer-with-file";
import { releaseFileText } from "@/lib/exchange/release-file";
import { exportRelease } from "@/lib/records/see-release";

/** A signed release with all of its evidence, as a file that `npm run verify` checks without this program's records. */
export const GET = (_request: Request, { params }: { params: Promise<{ release: string }> }): Promise<Response> =>
  answerWithFile(async (actor) => {
    const { signOff, evidence } = await exportRelease(actor, (await params).release);
    return {
      name: `${evidence.bench.clinicNumber}-socket-${signOff.socket.number}-${evidence.at.slice(0, 10)}.release.json`,
      type: jsonType,
      body: releaseFileText(signOff),
    };
  });
