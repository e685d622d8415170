import type { Metadata } from "next";
import { onlyWho, show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { GateList } from "@/app/_parts/gate-list";
import { gateWords } from "@/app/_parts/gate-words";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { ProofFields } from "@/app/_parts/proof-fields";
import { StateMark } from "@/app/_parts/state-mark";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { sourceKinds } from "@/lib/fit";
import { awaitsCountersignature, countersignStatement } from "@/lib/records/meanings";
import { asksForCode } from "@/lib/records/second-factor";
import { seeRelease } from "@/lib/records/see-release";
import { signAsSecond } from "./actions";

export const metadata: Metadata = { title: "Countersign a release" };

export default async function CountersignPage({ params }: { params: Promise<{ release: string }> }) {
  const { release } = await params;
  const actor = await requireActor(`/releases/${release}/countersign`);
  onlyWho(actor, "sign");
  const [{ signOff, evidence }, withCode] = await Promise.all([show(seeRelease(actor, release)), asksForCode(actor)]);
  const { assessment } = evidence;
  const accepted = assessment.gates.filter((gate) => gate.accepted);
  return (
    <>
      <PageHead
        title="Countersign a release"
        about={
          <>
            <Link href={`/releases/${signOff.id}`}>
              Socket {signOff.socket.number} of {evidence.bench.clinicNumber}
            </Link>
            , signed by {signOff.byName}, {dayAndTimeAt(signOff.at, signOff.timeZone)} ·{" "}
            <Link href={`/episodes/${signOff.episodeId}`}>the episode</Link>
          </>
        }
      />
      <section aria-labelledby="decision">
        <p>
          <StateMark state={assessment.decision} />
        </p>
        <h2 id="decision">{assessment.sentence}</h2>
        {accepted.length > 0 && (
          <ul>
            {accepted.map(({ id, accepted: why }) => (
              <li key={id}>
                <strong>{gateWords[id]}</strong> was accepted by {why?.by}: {why?.why}
              </li>
            ))}
          </ul>
        )}
        <GateList gates={assessment.gates} kinds={sourceKinds} timeZone={signOff.timeZone} unfolded />
      </section>
      <section aria-labelledby="sign">
        <h2 id="sign">Second signature</h2>
        {!awaitsCountersignature(signOff) ? (
          <p>{signOff.withdrawal ? "This signature was withdrawn." : "No second signature is awaited here."}</p>
        ) : signOff.byId === actor.id ? (
          <p>You signed this yourself: another prosthetist of this clinic has to sign it as well.</p>
        ) : (
          <ActionForm action={signAsSecond}>
            <HiddenField name="signOffId" value={signOff.id} />
            <p>
              {countersignStatement}
              <br />
              {actor.name}
              {actor.credentialsLine && `, ${actor.credentialsLine}`}
            </p>
            <ProofFields withCode={withCode} />
            <SubmitButton sending="Signing…">Countersign</SubmitButton>
          </ActionForm>
        )}
      </section>
      <section>
        <Advice />
      </section>
    </>
  );
}
