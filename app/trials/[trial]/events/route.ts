import { receiveTrialEvents } from "@/lib/records/receive-trial-events";
import { answerDevice, sentBy } from "../answer";

/**
 * What a device kept of this trial: `{ sentAt, events }`. The answer says of each event what became of it; the device
 * forgets an event only then.
 */
export const POST = (request: Request, { params }: { params: Promise<{ trial: string }> }): Promise<Response> =>
  answerDevice(request, async (actor) => {
    const { received } = await receiveTrialEvents(actor, { ...(await sentBy(request)), trialId: (await params).trial });
    return { received };
  });
