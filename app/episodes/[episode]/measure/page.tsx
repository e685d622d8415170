import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { dayAt, longDay } from "@/app/_parts/dates";
import { draftKey } from "@/app/_parts/draft-record";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { limitValue } from "@/lib/fit";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeEpisode } from "@/lib/records/see-episode";
import { measure } from "./actions";
import { TapeFields } from "./tape-fields";

export const metadata: Metadata = { title: "Measure the limb" };

export default async function MeasurePage({ params }: { params: Promise<{ episode: string }> }) {
  const { episode: episodeId } = await params;
  const actor = await requireActor(`/episodes/${episodeId}/measure`);
  const { episode, bundle, limits } = await show(seeEpisode(actor, episodeId));
  const { timeZone } = bundle.clinic;
  const last = bundle.limbMeasurements.at(-1);
  return (
    <>
      <PageHead title="Measure the limb" about={<EpisodeLink episode={episode} />} />
      <ActionForm action={measure} draft={draftKey("measurement", episodeId, actor.id)}>
        <HiddenField name="id" value={newId()} />
        <HiddenField name="episodeId" value={episode.id} />
        <TapeFields
          at={toClinicTime(now(), timeZone)}
          last={
            last && {
              day: longDay(dayAt(last.at, timeZone)),
              at: toClinicTime(last.at, timeZone),
              stations: last.stations,
            }
          }
          landmark={bundle.episode.landmark}
          stationsFrom={bundle.episode.stationsFrom}
          limits={{
            tapeErrorMm: limitValue(limits, "tape-error-mm"),
            settledPercent: limitValue(limits, "settled-percent"),
            doffedLeastMin: limitValue(limits, "doffed-before-measuring-minutes"),
            sameTimeHours: limitValue(limits, "same-time-hours"),
          }}
        />
        <SubmitButton>Save the measurement</SubmitButton>
      </ActionForm>
    </>
  );
}
