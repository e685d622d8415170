import { randomUUID } from "node:crypto";
import type { Metadata } from "next";
import { onlyWho, show } from "@/app/_forms/show";
import { HiddenField, TextArea } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { seeRelease } from "@/lib/records/see-release";
import { add } from "./actions";

export const metadata: Metadata = { title: "Put something right" };

export default async function AddendumPage({ params }: { params: Promise<{ release: string }> }) {
  const { release } = await params;
  const actor = await requireActor(`/releases/${release}/addendum`);
  onlyWho(actor, "sign");
  const { signOff, evidence } = await show(seeRelease(actor, release));
  return (
    <>
      <PageHead
        title="Put something right"
        about={
          <Link href={`/releases/${signOff.id}`}>
            {signOff.meaning}, socket {signOff.socket.number} of {evidence.bench.clinicNumber}
          </Link>
        }
      />
      <p className="lead">
        What was signed stays as it is. An addendum stands below it, with your name. Where the socket should be made otherwise,
        withdraw the signature instead and sign anew.
      </p>
      <ActionForm action={add}>
        <HiddenField name="id" value={randomUUID()} />
        <HiddenField name="signOffId" value={signOff.id} />
        <TextArea name="words" label="What is put right" hint="The bench reads it too: no clinical words." />
        <SubmitButton>Add it</SubmitButton>
      </ActionForm>
    </>
  );
}
