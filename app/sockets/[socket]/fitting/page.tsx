import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { draftKey } from "@/app/_parts/draft-record";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeEpisodeOfSocket } from "@/lib/records/see-episode";
import { fit } from "./actions";
import { FittingSections } from "./fitting-sections";

export const metadata: Metadata = { title: "Record a fitting" };

export default async function FittingPage({ params }: { params: Promise<{ socket: string }> }) {
  const { socket: socketId } = await params;
  const actor = await requireActor(`/sockets/${socketId}/fitting`);
  const { episode, bundle, limits } = await show(seeEpisodeOfSocket(actor, socketId));
  const socket = episode.sockets.find(({ id }) => id === socketId);
  return (
    <>
      <PageHead title={`Fitting of socket ${socket?.number ?? ""}`} about={<EpisodeLink episode={episode} />} />
      <ActionForm action={fit} draft={draftKey("fitting", socketId, actor.id)}>
        <HiddenField name="id" value={newId()} />
        <HiddenField name="socketId" value={socketId} />
        <FittingSections bundle={bundle} limits={limits} socket={socket} at={toClinicTime(now(), bundle.clinic.timeZone)}>
          <SubmitButton>Save the fitting</SubmitButton>
        </FittingSections>
      </ActionForm>
    </>
  );
}
