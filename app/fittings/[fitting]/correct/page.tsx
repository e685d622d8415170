import type { Metadata } from "next";
import { onlyWho, show } from "@/app/_forms/show";
import { draftKey } from "@/app/_parts/draft-record";
import { HiddenField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { FittingSections } from "@/app/sockets/[socket]/fitting/fitting-sections";
import { requireActor } from "@/lib/access/session";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId } from "@/lib/records/clock";
import { seeFitting } from "@/lib/records/see-fitting";
import { unitsFor } from "@/lib/records/units";
import { correct } from "../actions";
import { asTyped } from "./as-typed";

export const metadata: Metadata = { title: "Put a fitting right" };

/** The fitting as it was recorded, in its form, to be put right with a reason. Both versions stay. */
export default async function CorrectPage({ params }: { params: Promise<{ fitting: string }> }) {
  const { fitting: fittingId } = await params;
  const actor = await requireActor(`/fittings/${fittingId}/correct`);
  onlyWho(actor, "record a fitting");
  const [{ episode, bundle, limits, fitting }, units] = await Promise.all([show(seeFitting(actor, fittingId)), unitsFor(actor)]);
  const socket = episode.sockets.find(({ id }) => id === fitting.socketId);
  const at = toClinicTime(fitting.at, bundle.clinic.timeZone);
  const id = newId();
  return (
    <>
      <PageHead
        title={`Put right: fitting of socket ${socket?.number ?? ""}`}
        about={<Link href={`/fittings/${fitting.id}`}>The fitting as it is</Link>}
      />
      <p className="soft lead">
        Change what is wrong and say why. The new version counts from then on; the old one can still be read. Looks at the skin
        that were added later stay.
      </p>
      <ActionForm
        action={correct}
        draft={draftKey("put a fitting right", fitting.id, actor.id)}
        initial={{ ...asTyped(fitting, units), id, correctsId: fitting.id, at }}
      >
        <HiddenField name="id" value={id} />
        <HiddenField name="correctsId" value={fitting.id} />
        <FittingSections bundle={bundle} limits={limits} socket={socket} at={at}>
          <TextField name="why" label="Why it is put right" size={60} />
          <SubmitButton>Save the correction</SubmitButton>
        </FittingSections>
      </ActionForm>
    </>
  );
}
