import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { CheckBox, HiddenField, NumberField, TextArea, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { whenToStop } from "@/app/_parts/skin-words";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { isUpperLimb } from "@/lib/fit";
import { newId } from "@/lib/records/clock";
import { seeEpisodeOfSocket } from "@/lib/records/see-episode";
import { plan } from "./actions";
import { LoadReading } from "./load-reading";
import styles from "./plan.module.css";

export const metadata: Metadata = { title: "Plan a wear trial" };

export default async function PlanTrialPage({ params }: { params: Promise<{ socket: string }> }) {
  const { socket: socketId } = await params;
  const actor = await requireActor(`/sockets/${socketId}/wear-trial`);
  const { episode, bundle, assessment, limits } = await show(seeEpisodeOfSocket(actor, socketId));
  const socket = episode.sockets.find(({ id }) => id === socketId);
  const { device, level } = bundle.episode;
  const upper = isUpperLimb(level);
  return (
    <>
      <PageHead title={`Plan a wear trial of socket ${socket?.number ?? ""}`} about={<EpisodeLink episode={episode} />} />
      <ActionForm action={plan}>
        <HiddenField name="id" value={newId()} />
        <HiddenField name="socketId" value={socketId} />
        {assessment.decision === "must not be released" && assessment.subject?.socketId === socketId && (
          <>
            <p className={styles.forbidden} role="note">
              <strong>{assessment.sentence}</strong> Nobody wears this socket again before a prosthetist has said why: what was
              altered, that the skin has healed, what the physician said.
            </p>
            <TextArea name="againWhy" label="Why it is tried again" rows={2} hint="It stands in the record under your name." />
          </>
        )}
        <NumberField
          name="minutes"
          label="Minutes to wear it"
          unit="min"
          first="20"
          hint="20 minutes or more of ordinary work: common practice, no source."
        />
        <NumberField name="intervalMin" label="Minutes between check-ins" unit="min" first="5" />
        {upper ? (
          <>
            <p className="soft">
              {device
                ? `The planned device: ${device.massKg} kg with its centre of mass ${device.centreOfMassMm} mm from the joint. The load should pull on the limb as it will.`
                : "The planned device’s mass is not known yet: without it nobody can say if the load is right."}
            </p>
            <NumberField name="loadKg" label="Load" unit="kg" {...(device ? { first: String(device.massKg) } : {})} />
            <NumberField
              name="loadDistanceMm"
              label="Distance of the load from the joint"
              unit="mm"
              {...(device ? { first: String(device.centreOfMassMm) } : {})}
            />
            <LoadReading device={device} limits={limits} />
          </>
        ) : (
          <p className="soft">Lower limb: the body is the load.</p>
        )}
        <TextArea
          name="activities"
          label="What the wearer will do"
          hint="One a line: ordinary work, such as coiling rope or walking up stairs."
        />
        <TextField name="watchedBy" label="Who watches" optional />
        <CheckBox name="enteredAfterwards" label="The trial is over; I enter it afterwards with its true times" />
        <SubmitButton>Save the plan</SubmitButton>
      </ActionForm>
      <section aria-labelledby="prepare">
        <h2 id="prepare">Before it begins</h2>
        <ul>
          <li>Look at the skin first: no trial over a mark that has not faded, and none over broken skin.</li>
          <li>Somebody stays within reach, knows how to doff the socket, and has the clinic’s number.</li>
          <li>{whenToStop}</li>
        </ul>
      </section>
      <section>
        <Advice />
      </section>
    </>
  );
}
