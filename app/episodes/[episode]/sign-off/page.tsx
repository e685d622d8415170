import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { Choose } from "@/app/_parts/choices";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { CheckBox, HiddenField, TextArea, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { GateList } from "@/app/_parts/gate-list";
import { gateWords } from "@/app/_parts/gate-words";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { ProofFields } from "@/app/_parts/proof-fields";
import { StateMark } from "@/app/_parts/state-mark";
import { SubmitButton } from "@/app/_parts/submit-button";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { acceptableGates, type Gate, sourceKinds } from "@/lib/fit";
import { clinicSettings } from "@/lib/records/clinic";
import { awaitsCountersignature, meanings, statements } from "@/lib/records/meanings";
import { asksForCode } from "@/lib/records/second-factor";
import { seeEpisode } from "@/lib/records/see-episode";
import { digestOfShown } from "@/lib/records/shown-evidence";
import { SetAsideNotice } from "../set-aside";
import { signEvidence } from "./actions";
import styles from "./sign-off.module.css";

export const metadata: Metadata = { title: "Sign off" };

export default async function SignOffPage({ params }: { params: Promise<{ episode: string }> }) {
  const { episode: episodeId } = await params;
  const actor = await requireActor(`/episodes/${episodeId}/sign-off`);
  const [{ episode, assessment, bundle, setAside }, withCode, clinic] = await Promise.all([
    show(seeEpisode(actor, episodeId)),
    asksForCode(actor),
    clinicSettings(),
  ]);
  const open = assessment.gates.filter(
    (gate) => (gate.state === "not met" || gate.state === "unknown" || gate.state === "forbids") && !gate.accepted,
  );
  const inTheWay = open.filter((gate) => gate.state === "forbids" || !mayBeAccepted(gate));
  const toAccept = open.filter((gate) => !inTheWay.includes(gate));
  const close = assessment.gates.filter(({ state }) => state === "close");
  const standing = episode.signOffs.filter(
    ({ withdrawal, socketId }) => withdrawal === null && socketId === assessment.subject?.socketId,
  );
  const waiting = standing.find(awaitsCountersignature);
  const left = meanings.filter((meaning) => !standing.some((signOff) => signOff.meaning === meaning));
  const about = <EpisodeLink episode={episode} />;

  return (
    <>
      <PageHead title={assessment.subject ? `Sign for socket ${assessment.subject.number}` : "Sign off"} about={about} />
      <SetAsideNotice events={setAside} episode={episode} />
      <section aria-labelledby="decision" className={styles.first}>
        <p>
          <StateMark state={assessment.decision} />
        </p>
        <h2 id="decision">{assessment.sentence}</h2>
      </section>
      <section aria-labelledby="covers">
        <h2 id="covers">What the signature covers</h2>
        <p className="soft">
          The episode’s limb measurements, every socket with its adjustments, fittings, trials and looks at the skin, the limits
          in force, and this assessment, frozen as they stand.
        </p>
        <GateList gates={assessment.gates} kinds={sourceKinds} timeZone={bundle.clinic.timeZone} unfolded />
      </section>
      <section aria-labelledby="sign">
        <h2 id="sign">Signature</h2>
        {inTheWay.length > 0 ? (
          <>
            <p>
              This cannot be signed.{" "}
              {inTheWay.some(({ state }) => state === "forbids")
                ? "What forbids a release cannot be accepted by anyone."
                : "These have to be settled first:"}
            </p>
            <ul>
              {inTheWay.map((gate) => (
                <li key={gate.id}>
                  {gateWords[gate.id]}: {gate.why}
                </li>
              ))}
            </ul>
          </>
        ) : left.length === 0 || standing.some(({ meaning }) => meaning === meanings[1]) ? (
          <p>
            This socket is signed for.{" "}
            {waiting && (
              <Link href={`/releases/${waiting.id}/countersign`}>A second prosthetist countersigns the release here.</Link>
            )}
          </p>
        ) : !may(actor, "sign") ? (
          <p>A prosthetist of this clinic signs. You are signed in as {actor.role}.</p>
        ) : (
          <ActionForm action={signEvidence}>
            <HiddenField name="episodeId" value={episode.id} />
            <HiddenField name="evidenceVersion" value={String(episode.evidenceVersion)} />
            <HiddenField name="shown" value={digestOfShown(bundle, assessment)} />
            {toAccept.map((gate, index) => (
              <div key={gate.id} className={styles.accept}>
                <StateMark state={gate.state} />
                <p>
                  <strong>{gateWords[gate.id]}.</strong> {gate.why}
                </p>
                <HiddenField name={`acceptances.${index}.gate`} value={gate.id} />
                <TextArea
                  name={`acceptances.${index}.why`}
                  label={`Accept “${gateWords[gate.id]}” with this reason`}
                  rows={2}
                  hint="It stands under your name on the release sheet."
                />
              </div>
            ))}
            {close.map((gate) => (
              <CheckBox
                key={gate.id}
                name={`closeRead.${gate.id}`}
                label={`I have read: ${gateWords[gate.id]} is close to its limit`}
                hint={gate.why}
              />
            ))}
            <Choose
              name="meaning"
              label="What the signature means"
              options={left.map((meaning) => ({ value: meaning, label: meaning }))}
            />
            <div className={styles.statement}>
              {left.map((meaning) => (
                <p key={meaning}>
                  <strong>{meaning}:</strong> {statements[meaning]}
                </p>
              ))}
              {clinic?.countersignReleases && (
                <p>A release is in force only once a second prosthetist of this clinic has signed it as well.</p>
              )}
              <p>
                {actor.name}
                {actor.credentialsLine && `, ${actor.credentialsLine}`}
              </p>
            </div>
            <TextField
              name="definitiveMaterial"
              label="Material of the definitive socket"
              optional
              hint="For a release: the bench reads it on the sheet. Left empty, the sheet says to ask you before making."
            />
            <ProofFields withCode={withCode} />
            <SubmitButton sending="Signing…">Sign</SubmitButton>
          </ActionForm>
        )}
      </section>
      <section>
        <Advice />
      </section>
    </>
  );
}

const mayBeAccepted = ({ id }: Gate): boolean => (acceptableGates as readonly string[]).includes(id);
