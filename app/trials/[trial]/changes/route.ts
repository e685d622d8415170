import { hearChanges } from "@/lib/records/changes";
import { episodeOfLiveTrial } from "@/lib/records/see-live-trial";
import { answerDevice } from "../answer";

/** So that nobody on the way takes a silent line for a dead one. */
const heartbeatMs = 15_000;

/** Server-sent events: "changed" whenever anything of the trial's episode was recorded. What it was is asked for then. */
export async function GET(request: Request, { params }: { params: Promise<{ trial: string }> }): Promise<Response> {
  let episodeId = "";
  const answer = await answerDevice(request, async (actor) => {
    episodeId = await episodeOfLiveTrial(actor, (await params).trial);
    return {};
  });
  if (!answer.ok) return answer;
  return new Response(changesOf(episodeId, request.signal), {
    headers: { "content-type": "text/event-stream", "cache-control": "no-store", "x-accel-buffering": "no" },
  });
}

function changesOf(episodeId: string, gone: AbortSignal): ReadableStream<Uint8Array> {
  const encoder = new TextEncoder();
  let stop = () => {};
  return new ReadableStream({
    start: (controller) => {
      const say = (text: string) => controller.enqueue(encoder.encode(text));
      say("retry: 5000\n\n");
      const stopHearing = hearChanges(episodeId, () => say("event: changed\ndata: \n\n"));
      const heartbeat = setInterval(() => say(": still here\n\n"), heartbeatMs);
      heartbeat.unref();
      stop = () => {
        stopHearing();
        clearInterval(heartbeat);
      };
      gone.addEventListener("abort", () => {
        stop();
        controller.close();
      });
    },
    cancel: () => stop(),
  });
}
