import type { Metadata } from "next";
import { HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { newId } from "@/lib/records/clock";
import { add } from "../actions";
import { WearerFields } from "../wearer-fields";

export const metadata: Metadata = { title: "Add a wearer" };

export default async function NewWearer() {
  await requireActor("/wearers/new");
  return (
    <>
      <PageHead title="Add a wearer" about="Cautions and episodes are added on the wearer’s own page." />
      <ActionForm action={add}>
        <HiddenField name="id" value={newId()} />
        <WearerFields />
        <SubmitButton>Add the wearer</SubmitButton>
      </ActionForm>
    </>
  );
}
