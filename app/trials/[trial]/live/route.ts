import { limbShapeOf } from "@/app/_parts/limb-shape";
import { numbersInOrder } from "@/app/episodes/mark-numbers-of-episode";
import type { LiveTrial } from "@/app/live/_device/live-trial";
import { isUpperLimb, trialLimitsOf } from "@/lib/fit";
import { now } from "@/lib/records/clock";
import { seeLiveTrial } from "@/lib/records/see-live-trial";
import { answerDevice } from "../answer";

/** All that a device needs to run this trial with no network. */
export const GET = (request: Request, { params }: { params: Promise<{ trial: string }> }): Promise<Response> =>
  answerDevice(request, async (actor) => {
    const seen = await seeLiveTrial(actor, (await params).trial);
    return liveTrial(seen, { named: actor.onlyTrial === undefined });
  });

type Seen = Awaited<ReturnType<typeof seeLiveTrial>>;

function liveTrial({ episode, bundle, limits, clinic, trialId }: Seen, { named }: { named: boolean }): LiveTrial {
  const record = bundle.wearTrials.find(({ id }) => id === trialId);
  const row = episode.wearTrials.find(({ id }) => id === trialId);
  if (!record || !row) throw new Error("the trial is in its episode");
  const socket = episode.sockets.find(({ id }) => id === record.socketId);
  const signed = episode.signOffs.find(({ socketId, withdrawal }) => socketId === record.socketId && withdrawal === null);
  return {
    trialId,
    ...(named ? { wearer: episode.wearer.name } : {}),
    limbWords: `${episode.side} ${episode.level}`,
    isUpperLimb: isUpperLimb(bundle.episode.level),
    socketNumber: socket?.number ?? 0,
    plan: record.plan,
    ...(row.watchedBy ? { watchedBy: row.watchedBy } : {}),
    events: record.events,
    looks: record.inspections,
    markNumbers: [...numbersInOrder(record)],
    limb: limbShapeOf(bundle, socket),
    limits: trialLimitsOf(limits),
    clinic: { name: clinic.name, ...(clinic.phone ? { phone: clinic.phone } : {}), invented: clinic.invented },
    ...(signed ? { locked: `${signed.byName} signed for this socket: nothing can be added to its trial.` } : {}),
    serverNow: now().toISOString(),
  };
}
