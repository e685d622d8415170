import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { dayAt, longDay } from "@/app/_parts/dates";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { CheckBox, DateField, HiddenField, NumberField, SelectField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { Rows } from "@/app/_parts/rows";
import { SubmitButton } from "@/app/_parts/submit-button";
import { wordOptions } from "@/app/_parts/word-options";
import { requireActor } from "@/lib/access/session";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeEpisode } from "@/lib/records/see-episode";
import { measure } from "./actions";

export const metadata: Metadata = { title: "Measure the limb" };

export default async function MeasurePage({ params }: { params: Promise<{ episode: string }> }) {
  const { episode: episodeId } = await params;
  const actor = await requireActor(`/episodes/${episodeId}/measure`);
  const { episode, bundle } = await show(seeEpisode(actor, episodeId));
  const { timeZone } = bundle.clinic;
  const last = bundle.limbMeasurements.at(-1);
  return (
    <>
      <PageHead title="Measure the limb" about={<EpisodeLink episode={episode} />} />
      <ActionForm action={measure}>
        <HiddenField name="id" value={newId()} />
        <HiddenField name="episodeId" value={episode.id} />
        <DateField
          name="at"
          label="When"
          withTime
          first={toClinicTime(now(), timeZone)}
          hint="Limbs change through the day: the same time of day tells more."
        />
        <NumberField
          name="minutesSinceDoffing"
          label="Minutes since doffing"
          unit="min"
          optional
          hint="Wait 30 minutes where you can: a limb just out of its socket is smaller."
        />
        <SelectField name="method" label="How it was measured" options={wordOptions(["tape", "scan"])} first="tape" />
        <CheckBox name="linerOn" label="Liner on" />
        <Rows
          name="stations"
          label="Circumferences"
          one="level"
          hint={`Distances from the ${episode.stationsFrom}, going up. Landmark: ${episode.landmark}. ${last ? `The levels of ${longDay(dayAt(last.at, timeZone))} are filled in: the same levels can be compared.` : ""}`}
          fields={[
            { name: "distanceMm", label: "distance", kind: "number", unit: "mm" },
            {
              name: "circumferenceMm",
              label: last ? "circumference now" : "circumference",
              kind: "number",
              unit: "mm",
            },
          ]}
          first={(last?.stations ?? []).map(({ distanceMm }) => ({ distanceMm: String(distanceMm), circumferenceMm: "" }))}
          blank={last ? 0 : 5}
        />
        {last && (
          <p className="soft">
            Last time:{" "}
            {last.stations.map(({ distanceMm, circumferenceMm }) => `${circumferenceMm} mm at ${distanceMm}`).join(", ")}.
          </p>
        )}
        <NumberField name="capHeightMm" label="Height of the rounded end beyond the first level" unit="mm" optional />
        <NumberField name="limbLengthMm" label="Residual-limb length, if measured again" unit="mm" optional />
        <TextField name="note" label="Note" optional />
        <SubmitButton>Save the measurement</SubmitButton>
      </ActionForm>
    </>
  );
}
