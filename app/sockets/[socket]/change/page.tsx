import type { Metadata } from "next";
import { notFound } from "next/navigation";
import { onlyWho, show } from "@/app/_forms/show";
import { dayAt, longDay } from "@/app/_parts/dates";
import { draftKey } from "@/app/_parts/draft-record";
import { HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { choicesOfFindings } from "@/app/episodes/findings";
import { foundWith } from "@/app/episodes/found";
import { numbersOfEpisode } from "@/app/episodes/mark-numbers-of-episode";
import { SocketFields } from "@/app/episodes/socket-fields";
import { requireActor } from "@/lib/access/session";
import { findingsOfSocket } from "@/lib/fit";
import { seeEpisodeOfSocket } from "@/lib/records/see-episode";
import { change } from "./actions";

export const metadata: Metadata = { title: "Change a socket" };

/** What a socket is to be, as long as nobody has begun to make it. */
export default async function ChangeSocketPage({ params }: { params: Promise<{ socket: string }> }) {
  const { socket: socketId } = await params;
  const actor = await requireActor(`/sockets/${socketId}/change`);
  onlyWho(actor, "specify a socket");
  const { episode, bundle, limits } = await show(seeEpisodeOfSocket(actor, socketId));
  const row = episode.sockets.find(({ id }) => id === socketId);
  const socket = bundle.sockets.find(({ id }) => id === socketId);
  if (!row || !socket) notFound();
  return (
    <>
      <PageHead title={`Change socket ${socket.number}`} about={<Link href={`/sockets/${socketId}`}>Back to its order</Link>} />
      {row.state === "planned" ? (
        <ActionForm action={change} draft={draftKey("change", socketId, actor.id)}>
          <HiddenField name="socketId" value={socketId} />
          <HiddenField name="version" value={String(row.version)} />
          <SocketFields
            number={socket.number}
            where={{ stationsFrom: bundle.episode.stationsFrom, limbLengthMm: bundle.episode.limbLengthMm }}
            limits={limits}
            sockets={bundle.sockets
              .filter(({ number }) => number < socket.number)
              .map(({ id, number, stations }) => ({ id, number, stations }))}
            found={socket.derivedFrom ? foundWith(bundle, socket.derivedFrom, limits, numbersOfEpisode(episode)) : []}
            offers={[]}
            findings={choicesOfFindings(
              socket.derivedFrom ? findingsOfSocket(bundle, socket.derivedFrom, { limits }) : undefined,
              bundle.episode.level,
            )}
            measurements={bundle.limbMeasurements
              .toReversed()
              .map(({ id, at, stations }) => ({ id, label: longDay(dayAt(at, bundle.clinic.timeZone)), stations }))}
            first={{
              ...row,
              stations: socket.stations,
              adjustments: socket.adjustments,
              derivedFromId: socket.derivedFrom,
              limbMeasurementId: socket.limbMeasurementId,
            }}
          />
          <SubmitButton>Save</SubmitButton>
        </ActionForm>
      ) : (
        <p>
          Socket {socket.number} is {row.state}: what it was made from stands. Specify the next socket instead.
        </p>
      )}
    </>
  );
}
