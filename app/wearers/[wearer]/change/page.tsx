import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { seeWearer } from "@/lib/records/see-wearers";
import { change } from "../../actions";
import { WearerFields } from "../../wearer-fields";

export const metadata: Metadata = { title: "Change a wearer" };

export default async function ChangeWearer({ params }: { params: Promise<{ wearer: string }> }) {
  const { wearer: wearerId } = await params;
  const actor = await requireActor(`/wearers/${wearerId}/change`);
  const wearer = await show(seeWearer(actor, wearerId));
  return (
    <>
      <PageHead title={`Change ${wearer.name}`} about={wearer.clinicNumber} />
      <ActionForm action={change}>
        <HiddenField name="wearerId" value={wearer.id} />
        <HiddenField name="version" value={String(wearer.version)} />
        <WearerFields first={wearer} />
        <SubmitButton>Save</SubmitButton>
      </ActionForm>
    </>
  );
}
