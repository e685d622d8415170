import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Choose } from "@/app/_parts/choices";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { HiddenField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { wordOptions } from "@/app/_parts/word-options";
import { EpisodeFields } from "@/app/wearers/episode-fields";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { seeEpisode } from "@/lib/records/see-episode";
import { prosthetistsOf } from "@/lib/records/see-today";
import { change, course, strikeOut } from "./actions";

export const metadata: Metadata = { title: "Change the episode" };

export default async function ChangeEpisodePage({ params }: { params: Promise<{ episode: string }> }) {
  const { episode: episodeId } = await params;
  const actor = await requireActor(`/episodes/${episodeId}/change`);
  const [{ episode }, prosthetists] = await Promise.all([show(seeEpisode(actor, episodeId)), prosthetistsOf()]);
  const courses = episode.stage === "on hold" || episode.stage === "closed" ? ["in fitting"] : ["on hold", "closed"];
  return (
    <>
      <PageHead title="Change the episode" about={<EpisodeLink episode={episode} />} />
      <ActionForm action={change}>
        <HiddenField name="episodeId" value={episode.id} />
        <HiddenField name="version" value={String(episode.version)} />
        <EpisodeFields first={episode} prosthetists={prosthetists} />
        <SubmitButton>Save</SubmitButton>
      </ActionForm>
      <section aria-labelledby="course">
        <h2 id="course">Hold, close, or take up again</h2>
        <ActionForm action={course}>
          <HiddenField name="episodeId" value={episode.id} />
          <Choose name="course" label="The episode is" options={wordOptions(courses)} />
          <TextField name="why" label="Reason" size={48} />
          <SubmitButton kind="quiet">Set</SubmitButton>
        </ActionForm>
      </section>
      {may(actor, "strike out an episode") && (
        <section aria-labelledby="strike">
          <h2 id="strike">Entered by mistake</h2>
          <ActionForm action={strikeOut}>
            <p className="soft">
              A struck-out episode is kept and hidden, with your name and the reason. Nothing clinical is erased.
            </p>
            <HiddenField name="episodeId" value={episode.id} />
            <TextField name="why" label="Why it is struck out" size={48} />
            <SubmitButton kind="stop">Strike out this episode</SubmitButton>
          </ActionForm>
        </section>
      )}
    </>
  );
}
