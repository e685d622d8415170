import type { Metadata } from "next";
import { onlyWho, show } from "@/app/_forms/show";
import { HiddenField, TextArea } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { ProofFields } from "@/app/_parts/proof-fields";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { asksForCode } from "@/lib/records/second-factor";
import { seeRelease } from "@/lib/records/see-release";
import { withdraw } from "./actions";

export const metadata: Metadata = { title: "Withdraw a signature" };

export default async function WithdrawPage({ params }: { params: Promise<{ release: string }> }) {
  const { release } = await params;
  const actor = await requireActor(`/releases/${release}/withdraw`);
  onlyWho(actor, "withdraw a signature");
  const [{ signOff, evidence }, withCode] = await Promise.all([show(seeRelease(actor, release)), asksForCode(actor)]);
  return (
    <>
      <PageHead
        title="Withdraw a signature"
        about={
          <Link href={`/releases/${signOff.id}`}>
            {signOff.meaning}, socket {signOff.socket.number} of {evidence.bench.clinicNumber}, by {signOff.byName}
          </Link>
        }
      />
      {signOff.withdrawal ? (
        <p>
          {signOff.withdrawal.byName} withdrew this signature already: {signOff.withdrawal.why}
        </p>
      ) : (
        <ActionForm action={withdraw}>
          <p>
            The signature stays on record, marked as withdrawn wherever it is shown. Tell the bench and the wearer yourself: this
            program sends nothing.
          </p>
          <HiddenField name="signOffId" value={signOff.id} />
          <TextArea name="why" label="Why it is withdrawn" />
          <ProofFields withCode={withCode} />
          <SubmitButton kind="stop" sending="Withdrawing…">
            Withdraw the signature
          </SubmitButton>
        </ActionForm>
      )}
    </>
  );
}
