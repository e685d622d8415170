import type { Metadata } from "next";
import { onlyWho, show } from "@/app/_forms/show";
import { draftKey } from "@/app/_parts/draft-record";
import { CheckBox, DateField, HiddenField, NumberField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { Link } from "@/app/_parts/link";
import { MarkEditor } from "@/app/_parts/mark-editor";
import { markHint, markSeenBefore } from "@/app/_parts/mark-fields";
import { numbersOfMarks } from "@/app/_parts/mark-numbers";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { gradeMark } from "@/lib/fit";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeFitting } from "@/lib/records/see-fitting";
import { look } from "../actions";

export const metadata: Metadata = { title: "Look at the skin again" };

/** Another look after a fitting: each mark of the last one, and how it is now. */
export default async function LookPage({ params }: { params: Promise<{ fitting: string }> }) {
  const { fitting: fittingId } = await params;
  const actor = await requireActor(`/fittings/${fittingId}/look`);
  onlyWho(actor, "look at the skin");
  const { episode, bundle, fitting, versions } = await show(seeFitting(actor, fittingId));
  const socket = episode.sockets.find(({ id }) => id === fitting.socketId);
  const last = bundle.fittings.find(({ id }) => id === fitting.id)?.inspections.at(-1);
  const seen = (last?.marks ?? []).filter(({ strength }) => strength !== "none");
  const numbers = numbersOfMarks(versions.flatMap((version) => version.looks));
  return (
    <>
      <PageHead
        title="Look at the skin again"
        about={
          <Link href={`/fittings/${fitting.id}`}>
            Fitting of socket {socket?.number}, {episode.wearer.name}
          </Link>
        }
      />
      <ActionForm action={look} draft={draftKey("look after a fitting", fitting.id, actor.id)} markNumbers={numbers}>
        <HiddenField name="id" value={newId()} />
        <HiddenField name="fittingId" value={fitting.id} />
        <DateField name="at" label="When" withTime first={toClinicTime(now(), bundle.clinic.timeZone)} />
        <NumberField name="minutesAfterDoffing" label="Minutes after doffing" unit="min" />
        <MarkEditor
          name="marks"
          limb={limbShapeOf(bundle, socket)}
          minutes={{ name: "minutesAfterDoffing" }}
          hint={
            seen.length > 0
              ? `The marks of the last look are listed: say how each is now, or that it is gone. A mark that is not mentioned counts as not looked at. ${markHint}`
              : markHint
          }
          first={seen.map(markSeenBefore)}
          before={seen.map((mark) => ({ ...mark, grade: gradeMark(mark, last?.minutesAfterDoffing) }))}
        />
        <CheckBox name="noMarks" label="No mark anywhere" hint="Tick it only after looking all round, and at the end." />
        <TextField name="note" label="Note" optional />
        <SubmitButton>Save this look</SubmitButton>
      </ActionForm>
    </>
  );
}
