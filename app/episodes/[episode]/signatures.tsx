import { BenchQuestions } from "@/app/_parts/bench-questions";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { DateField, HiddenField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { SubmitButton } from "@/app/_parts/submit-button";
import type { EpisodeWhole } from "@/lib/records/bundle-of";
import { awaitsCountersignature, releaseMeaning } from "@/lib/records/meanings";
import type { OpenBenchQuestion } from "@/lib/records/see-bench-questions";
import { deliver } from "./actions";
import styles from "./episode.module.css";

interface SignaturesProps {
  episode: EpisodeWhole;
  released: boolean;
  timeZone: string;
  questions: readonly OpenBenchQuestion[];
}

/** Who signed for what; a signature is never erased, only withdrawn. */
export function Signatures({ episode, released, timeZone, questions }: SignaturesProps) {
  if (episode.signOffs.length === 0) return null;
  const standing = episode.signOffs.findLast(
    (signOff) => signOff.meaning === releaseMeaning && signOff.withdrawal === null && !awaitsCountersignature(signOff),
  );
  return (
    <section aria-labelledby="signatures">
      <h2 id="signatures">Signatures</h2>
      <ul className={styles.list}>
        {episode.signOffs.map((signOff) => (
          <li key={signOff.id}>
            <Link href={`/releases/${signOff.id}`} className={signOff.withdrawal ? styles.struck : undefined}>
              {signOff.meaning}
            </Link>{" "}
            {signOff.byName}, {dayAndTimeAt(signOff.at, timeZone)}
            {signOff.countersignature && <small> countersigned by {signOff.countersignature.byName}</small>}
            {awaitsCountersignature(signOff) && (
              <small>
                {" "}
                not in force yet: <Link href={`/releases/${signOff.id}/countersign`}>a second prosthetist signs it</Link>
              </small>
            )}
            {signOff.withdrawal && (
              <small>
                {" "}
                withdrawn by {signOff.withdrawal.byName}, {dayAndTimeAt(signOff.withdrawal.at, timeZone)}:{" "}
                {signOff.withdrawal.why}
              </small>
            )}
          </li>
        ))}
      </ul>
      <BenchQuestions questions={questions} />
      {standing && (
        <p className="not-on-paper">
          <Link href={`/releases/${standing.id}/made`}>Was the definitive socket made as specified?</Link> ·{" "}
          <Link href={`/releases/${standing.id}/wearing`}>Wear schedule</Link>
        </p>
      )}
      {released && !episode.deliveredAt && (
        <details>
          <summary>The definitive socket was delivered</summary>
          <ActionForm action={deliver}>
            <HiddenField name="episodeId" value={episode.id} />
            <DateField name="at" label="When" withTime />
            <TextField name="note" label="Note" optional />
            <SubmitButton>Record the delivery</SubmitButton>
          </ActionForm>
        </details>
      )}
    </section>
  );
}
