import type { Metadata } from "next";
import { onlyWho, show } from "@/app/_forms/show";
import { dayAt, longDay } from "@/app/_parts/dates";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { DateField, HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeEpisode } from "@/lib/records/see-episode";
import { findingsOf } from "../../findings";
import { SocketFields } from "../../socket-fields";
import { specify } from "./actions";

export const metadata: Metadata = { title: "Specify the next socket" };

export default async function NextSocketPage({ params }: { params: Promise<{ episode: string }> }) {
  const { episode: episodeId } = await params;
  const actor = await requireActor(`/episodes/${episodeId}/next-socket`);
  onlyWho(actor, "specify a socket");
  const { episode, bundle } = await show(seeEpisode(actor, episodeId));
  const last = episode.sockets.at(-1);
  const lastStations = bundle.sockets.at(-1)?.stations ?? [];
  const limb = bundle.limbMeasurements.at(-1);
  return (
    <>
      <PageHead title={`Specify socket ${(last?.number ?? 0) + 1}`} about={<EpisodeLink episode={episode} />} />
      <p className="soft lead">
        {last
          ? `The dimensions of socket ${last.number} are filled in. Write the adjustments, then the dimensions that follow from them; what they do not explain is shown.`
          : "The levels of the limb are filled in with its circumferences; take off what your design asks for."}
      </p>
      <ActionForm action={specify}>
        <HiddenField name="id" value={newId()} />
        <HiddenField name="episodeId" value={episode.id} />
        <DateField name="at" label="Specified" withTime first={toClinicTime(now(), bundle.clinic.timeZone)} />
        <SocketFields
          stationsFrom={episode.stationsFrom}
          sockets={bundle.sockets}
          findings={findingsOf(bundle, last?.id)}
          measurements={bundle.limbMeasurements
            .toReversed()
            .map(({ id, at }) => ({ id, label: longDay(dayAt(at, bundle.clinic.timeZone)) }))}
          first={{
            stations: last ? lastStations : (limb?.stations ?? []),
            adjustments: [],
            derivedFromId: last?.id,
            limbMeasurementId: limb?.id,
            material: last?.material,
            wallMm: last?.wallMm,
            lengthMm: last?.lengthMm,
            suspension: last?.suspension,
            trimLines: last?.trimLines,
          }}
        />
        <SubmitButton>Specify the socket</SubmitButton>
      </ActionForm>
    </>
  );
}
