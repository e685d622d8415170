import type { Metadata } from "next";
import { onlyWho, show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { DateField, HiddenField, TextArea, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { Rows } from "@/app/_parts/rows";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { seeWearing } from "@/lib/records/see-after-release";
import { plan as save } from "./actions";

export const metadata: Metadata = { title: "Plan the wearing" };

/** The prosthetist changes what is usual into what is right for this wearer. */
export default async function PlanWearingPage({ params }: { params: Promise<{ release: string }> }) {
  const { release } = await params;
  const actor = await requireActor(`/releases/${release}/wearing/change`);
  onlyWho(actor, "plan wearing");
  const { signOff, clinic, plan, usual } = await show(seeWearing(actor, release));
  const steps = plan?.steps ?? usual.steps.map(({ days, minutes, sessions }) => ({ days: days ?? 1, minutes, sessions }));
  return (
    <>
      <PageHead
        title="Plan the wearing"
        about={
          <Link href={`/releases/${signOff.id}/wearing`}>
            {signOff.episode.wearer.name}, {signOff.episode.side} {signOff.episode.level}
          </Link>
        }
      />
      {signOff.withdrawal ? (
        <p>This release was withdrawn: nothing is worn from it.</p>
      ) : (
        <ActionForm action={save}>
          <p className="lead">
            {plan ? "This is what was planned last." : "This is what is usual"}
            {!plan && usual.gentle && " with this wearer’s cautions: half the start, twice the days"}
            {!plan && ". Common practice, no source: change it as the wearer needs."}
          </p>
          <HiddenField name="signOffId" value={signOff.id} />
          <HiddenField name="version" value={String(plan?.position ?? 0)} />
          <DateField name="startOn" label="First day of wearing" first={plan?.startOn ?? usual.steps[0]?.from ?? ""} />
          <Rows
            name="steps"
            label="Steps"
            hint="Minutes of one time of wearing; left empty it is all day. The last step goes on."
            one="step"
            fields={[
              { name: "days", label: "days", kind: "number" },
              { name: "minutes", label: "minutes each time", kind: "number", unit: "min", optional: true },
              { name: "sessions", label: "times a day", kind: "number" },
            ]}
            first={steps.map(({ days, minutes, sessions }) => ({
              days: String(days),
              minutes: minutes === null ? "" : String(minutes),
              sessions: String(sessions),
            }))}
            blank={1}
          />
          <TextField
            name="call"
            label="Whom the wearer calls, and how"
            first={plan?.call ?? [clinic.name, clinic.phone].filter(Boolean).join(", ")}
            size={48}
          />
          <TextArea name="words" label="What you add, in plain words" first={plan?.words ?? ""} optional />
          <SubmitButton>Save the schedule</SubmitButton>
        </ActionForm>
      )}
      <section>
        <Advice />
      </section>
    </>
  );
}
