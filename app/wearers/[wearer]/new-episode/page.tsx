import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { newId } from "@/lib/records/clock";
import { prosthetistsOf } from "@/lib/records/see-today";
import { seeWearer } from "@/lib/records/see-wearers";
import { EpisodeFields } from "../../episode-fields";
import { open } from "./actions";

export const metadata: Metadata = { title: "Open an episode" };

export default async function NewEpisode({ params }: { params: Promise<{ wearer: string }> }) {
  const { wearer: wearerId } = await params;
  const actor = await requireActor(`/wearers/${wearerId}/new-episode`);
  const [wearer, prosthetists] = await Promise.all([show(seeWearer(actor, wearerId)), prosthetistsOf()]);
  return (
    <>
      <PageHead title="Open an episode" about={`${wearer.name} · ${wearer.clinicNumber}`} />
      <ActionForm action={open}>
        <HiddenField name="id" value={newId()} />
        <HiddenField name="wearerId" value={wearer.id} />
        <EpisodeFields prosthetists={prosthetists} first={actor.role === "prosthetist" ? { prosthetistId: actor.id } : {}} />
        <SubmitButton>Open the episode</SubmitButton>
      </ActionForm>
    </>
  );
}
