import type { Metadata } from "next";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { UnitFields } from "@/app/_parts/unit-fields";
import { requireActor } from "@/lib/access/session";
import { seeOwnUnits } from "@/lib/records/units";
import { change } from "./actions";

export const metadata: Metadata = { title: "Your units" };

export default async function MyUnits({ searchParams }: { searchParams: Promise<{ saved?: string }> }) {
  const actor = await requireActor("/my-units");
  const [{ saved }, own] = await Promise.all([searchParams, seeOwnUnits(actor)]);
  return (
    <>
      <PageHead title="Your units" about={`${actor.name}, ${actor.role}`} />
      <p className="lead">
        What you type is read in these units, and the other one is shown beside it. You can always write the unit behind a number:
        7 1/4 in, 184.2 mm. What is kept, judged and printed is metric.
      </p>
      {saved && <p role="status">Saved.</p>}
      <ActionForm action={change}>
        <UnitFields first={own} empty="as the clinic" />
        <SubmitButton>Save your units</SubmitButton>
      </ActionForm>
      <p>
        <Link href="/my-password">Change your password</Link>
      </p>
    </>
  );
}
