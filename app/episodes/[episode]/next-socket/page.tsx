import type { Metadata } from "next";
import { onlyWho, show } from "@/app/_forms/show";
import { dayAt, longDay } from "@/app/_parts/dates";
import { draftKey } from "@/app/_parts/draft-record";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { DateField, HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { findingsOfSocket } from "@/lib/fit";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeEpisode } from "@/lib/records/see-episode";
import { AdjustmentHistory } from "../../adjustment-history";
import { choicesOfFindings } from "../../findings";
import { foundWith, offersNamed } from "../../found";
import { numbersOfEpisode } from "../../mark-numbers-of-episode";
import { SocketFields } from "../../socket-fields";
import { specify } from "./actions";

export const metadata: Metadata = { title: "Specify the next socket" };

interface NextSocketProps {
  params: Promise<{ episode: string }>;
  /** `consider`: adjustments taken up from what was found. `from`: the socket to derive from. `how`: altered or made anew. */
  searchParams: Promise<{ consider?: string | string[]; from?: string; how?: string }>;
}

export default async function NextSocketPage({ params, searchParams }: NextSocketProps) {
  const [{ episode: episodeId }, { consider = [], from, how }] = await Promise.all([params, searchParams]);
  const actor = await requireActor(`/episodes/${episodeId}/next-socket`);
  onlyWho(actor, "specify a socket");
  const { episode, bundle, limits } = await show(seeEpisode(actor, episodeId));
  const last = episode.sockets.at(-1);
  const origin = episode.sockets.find(({ id }) => id === from) ?? last;
  const originStations = bundle.sockets.find(({ id }) => id === origin?.id)?.stations ?? [];
  const limb = bundle.limbMeasurements.at(-1);
  const number = (last?.number ?? 0) + 1;
  const found = origin ? foundWith(bundle, origin.id, limits, numbersOfEpisode(episode)) : [];
  return (
    <>
      <PageHead title={`Specify socket ${number}`} about={<EpisodeLink episode={episode} />} />
      <p className="soft lead">
        {origin
          ? `The levels of socket ${origin.number} are filled in. Write the adjustments: the dimensions follow from them, and what they do not explain is shown. A level that you type over stays as typed.`
          : "The levels of the limb are filled in with its circumferences; take off what your design asks for."}
      </p>
      {!found.some(({ forbids }) => forbids) && <AdjustmentHistory actor={actor} episodeId={episode.id} />}
      <ActionForm action={specify} draft={draftKey("next socket", episodeId, actor.id)}>
        <HiddenField name="id" value={newId()} />
        <HiddenField name="episodeId" value={episode.id} />
        <DateField name="at" label="Specified" withTime first={toClinicTime(now(), bundle.clinic.timeZone)} />
        <SocketFields
          number={number}
          where={{ stationsFrom: bundle.episode.stationsFrom, limbLengthMm: bundle.episode.limbLengthMm }}
          limits={limits}
          sockets={bundle.sockets.map(({ id, number: of, stations }) => ({ id, number: of, stations }))}
          found={found}
          offers={offersNamed(found, [consider].flat())}
          findings={choicesOfFindings(origin ? findingsOfSocket(bundle, origin.id, { limits }) : undefined, bundle.episode.level)}
          measurements={bundle.limbMeasurements
            .toReversed()
            .map(({ id, at, stations }) => ({ id, label: longDay(dayAt(at, bundle.clinic.timeZone)), stations }))}
          first={{
            stations: origin ? originStations : (limb?.stations ?? []),
            adjustments: [],
            derivedFromId: origin?.id,
            limbMeasurementId: limb?.id,
            material: origin?.material,
            wallMm: origin?.wallMm,
            lengthMm: origin?.lengthMm,
            suspension: origin?.suspension,
            trimLines: origin?.trimLines,
            benchNote: how === "alter" && origin ? `Alter socket ${origin.number}; it is not made anew.` : undefined,
          }}
        />
        <SubmitButton>Specify the socket</SubmitButton>
      </ActionForm>
    </>
  );
}
