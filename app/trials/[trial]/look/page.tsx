import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { draftKey } from "@/app/_parts/draft-record";
import { CheckBox, DateField, HiddenField, NumberField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { Link } from "@/app/_parts/link";
import { MarkEditor } from "@/app/_parts/mark-editor";
import { markHint, markSeenBefore } from "@/app/_parts/mark-fields";
import { counted } from "@/app/_parts/numbers";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { numbersInOrder } from "@/app/episodes/mark-numbers-of-episode";
import { requireActor } from "@/lib/access/session";
import { gradeMark, type WearTrialRecord } from "@/lib/fit";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeEpisodeOfTrial } from "@/lib/records/see-episode";
import { look } from "../actions";

export const metadata: Metadata = { title: "Look at the skin" };

export default async function LookPage({ params }: { params: Promise<{ trial: string }> }) {
  const { trial: trialId } = await params;
  const actor = await requireActor(`/trials/${trialId}/look`);
  const { episode, bundle } = await show(seeEpisodeOfTrial(actor, trialId));
  const record = bundle.wearTrials.find(({ id }) => id === trialId);
  const last = record?.inspections.at(-1);
  const seen = (last?.marks ?? []).filter(({ strength }) => strength !== "none");
  const asOf = now();
  const since = record && minutesSinceDoffing(record, asOf);
  const minutes = since === undefined ? {} : { first: String(since) };
  const socket = episode.sockets.find(({ id }) => id === record?.socketId);
  return (
    <>
      <PageHead
        title={last ? "Look at the skin again" : "Look at the skin"}
        about={
          <Link href={`/trials/${trialId}`}>
            Wear trial of {episode.wearer.name}, {episode.side} {episode.level}
          </Link>
        }
      />
      <ActionForm
        action={look}
        draft={draftKey("look at the skin", trialId, actor.id)}
        markNumbers={record ? numbersInOrder(record) : new Map()}
      >
        <HiddenField name="id" value={newId()} />
        <HiddenField name="trialId" value={trialId} />
        <DateField name="at" label="When" withTime first={toClinicTime(asOf, bundle.clinic.timeZone)} />
        <NumberField name="minutesAfterDoffing" label="Minutes after doffing" unit="min" {...minutes} />
        <MarkEditor
          name="marks"
          limb={limbShapeOf(bundle, socket)}
          minutes={{ name: "minutesAfterDoffing", ...minutes }}
          hint={last && seen.length > 0 ? `${seenBefore(last.minutesAfterDoffing)} ${markHint}` : markHint}
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

const seenBefore = (minutes: number): string =>
  `The marks of the last look, ${counted(minutes, "minute")} after doffing, are listed: say how each is now, or that it is gone. A mark that is not mentioned counts as not looked at: remove those that nobody looked at.`;

/** Filled in where the socket came off within the last two hours: later looks are entered afterwards, with their own time. */
function minutesSinceDoffing(record: WearTrialRecord, asOf: Date): number | undefined {
  const off =
    record.events.findLast(({ kind }) => kind === "doffed") ??
    record.events.findLast(({ kind }) => kind === "ended" || kind === "stop-sign");
  if (!off) return undefined;
  const minutes = Math.floor((asOf.getTime() - Date.parse(off.at)) / 60_000);
  return minutes >= 0 && minutes <= 120 ? minutes : undefined;
}
