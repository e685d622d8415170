import { receiveTrialLook } from "@/lib/records/receive-trial-look";
import { answerDevice, sentBy } from "../answer";

/** One look at the skin that a device kept: `{ sentAt, look }`. The answer says what became of it. */
export const POST = (request: Request, { params }: { params: Promise<{ trial: string }> }): Promise<Response> =>
  answerDevice(request, async (actor) => {
    const { received } = await receiveTrialLook(actor, { ...(await sentBy(request)), trialId: (await params).trial });
    return { received };
  });
