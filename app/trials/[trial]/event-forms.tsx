import { Choose, Scale } from "@/app/_parts/choices";
import { DateField, HiddenField, SelectField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Rows } from "@/app/_parts/rows";
import { feelingWords, stopSignWords, whenToStop } from "@/app/_parts/skin-words";
import { SubmitButton } from "@/app/_parts/submit-button";
import { wordOptions } from "@/app/_parts/word-options";
import { aspects, feelingKinds, reporters, stopSigns, thirds, type WearTrial } from "@/lib/fit";
import { newId } from "@/lib/records/clock";
import { record } from "./actions";
import styles from "./trial.module.css";

interface EventFormsProps {
  trialId: string;
  state: WearTrial["state"];
  /** The trial is over and written down afterwards: every event brings its own time, and all may come in any order. */
  afterwards: boolean;
  began: boolean;
  ended: boolean;
  doffed: boolean;
  checkIns: readonly { id: string; label: string }[];
}

/** What can be recorded now: begin it; check in, pause, stop and end while it runs; doff once it is over. */
export function EventForms({ trialId, state, afterwards, began, ended, doffed, checkIns }: EventFormsProps) {
  const running = state === "running";
  const paused = state === "paused";
  const shown = { trialId, afterwards };
  return (
    <div className={styles.forms}>
      {!began && (
        <EventForm {...shown} kind="begun" button="Begin the trial" quiet={!afterwards}>
          {!afterwards && <p className="soft">Or record it on this page: it needs the network for each press.</p>}
        </EventForm>
      )}
      {(running || afterwards) && (
        <section aria-labelledby="check-in" className={styles.checkIn}>
          <h3 id="check-in">Check in</h3>
          <EventForm {...shown} kind="check-in" button="Save this check-in">
            <Scale name="comfort" label="How comfortable is the socket?" ends={["worst", "best imaginable"]} />
            <Scale name="pain" label="Pain" ends={["none", "worst imaginable"]} />
            <Scale name="exertion" label="How hard is it to carry on?" ends={["nothing at all", "as hard as it gets"]} />
            <Rows
              name="feelings"
              label="Anything felt?"
              one="feeling"
              fields={[
                {
                  name: "kind",
                  label: "felt",
                  kind: "select",
                  options: feelingKinds.map((kind) => ({ value: kind, label: feelingWords[kind] })),
                  empty: "nothing",
                },
                {
                  name: "aspect",
                  label: "aspect",
                  kind: "select",
                  options: wordOptions(aspects),
                  optional: true,
                  empty: "not said",
                },
                {
                  name: "third",
                  label: "third",
                  kind: "select",
                  options: wordOptions(thirds),
                  optional: true,
                  empty: "not said",
                },
              ]}
              blank={1}
            />
            <Choose name="reportedBy" label="Who said so" options={wordOptions(reporters)} />
          </EventForm>
        </section>
      )}
      {running && !afterwards && (
        <EventForm {...shown} kind="paused" button="Pause" quiet>
          {null}
        </EventForm>
      )}
      {paused && !afterwards && (
        <EventForm {...shown} kind="resumed" button="Go on">
          {null}
        </EventForm>
      )}
      {(running || paused || afterwards) && <StopSign {...shown} />}
      {!running && !paused && !afterwards && state !== "planned" && (
        <details>
          <summary>Record a stop sign of this trial afterwards</summary>
          <StopSign {...shown} />
        </details>
      )}
      {(running || paused || (afterwards && !ended)) && (
        <EventForm {...shown} kind="ended" button="End the trial" quiet>
          {null}
        </EventForm>
      )}
      {(state === "ended" || state === "stopped" || afterwards) && !doffed && (
        <EventForm {...shown} kind="doffed" button="Socket is off" quiet>
          {null}
        </EventForm>
      )}
      {afterwards && (
        <>
          <EventForm {...shown} kind="paused" button="Paused" quiet>
            {null}
          </EventForm>
          <EventForm {...shown} kind="resumed" button="Resumed" quiet>
            {null}
          </EventForm>
        </>
      )}
      {checkIns.length > 0 && (
        <details>
          <summary>Put a check-in right</summary>
          <p className="soft">
            Both stay on record: what was entered, and what it should have been. A stop sign cannot be taken back.
          </p>
          <EventForm {...shown} kind="corrected" button="Save the correction" quiet reason>
            <SelectField
              name="corrects"
              label="Which check-in"
              options={checkIns.map(({ id, label }) => ({ value: id, label }))}
            />
            <Scale name="comfort" label="Comfort" ends={["worst", "best imaginable"]} none="as it was" />
            <Scale name="pain" label="Pain" ends={["none", "worst imaginable"]} none="as it was" />
            <Scale name="exertion" label="Exertion" ends={["nothing at all", "as hard as it gets"]} none="as it was" />
          </EventForm>
        </details>
      )}
    </div>
  );
}

/** Always in reach while the socket is worn. */
function StopSign(shown: { trialId: string; afterwards: boolean }) {
  return (
    <section aria-labelledby="stop" className={styles.stop}>
      <h3 id="stop">Stop sign</h3>
      <p>{whenToStop}</p>
      <EventForm {...shown} kind="stop-sign" button="Stop the trial" stops>
        <SelectField
          name="sign"
          label="What was seen or said"
          options={stopSigns.map((sign) => ({ value: sign, label: stopSignWords[sign] }))}
        />
      </EventForm>
    </section>
  );
}

interface EventFormProps {
  trialId: string;
  kind: string;
  button: string;
  afterwards: boolean;
  quiet?: boolean;
  stops?: boolean;
  reason?: boolean;
  children: React.ReactNode;
}

function EventForm({
  trialId,
  kind,
  button,
  afterwards,
  quiet = false,
  stops = false,
  reason = false,
  children,
}: EventFormProps) {
  return (
    <ActionForm action={record} className={styles.event ?? ""}>
      <HiddenField name="trialId" value={trialId} />
      <HiddenField name="kind" value={kind} />
      <HiddenField name="id" value={newId()} />
      {children}
      {reason && <TextField name="note" label="Why" size={40} />}
      {afterwards && <DateField name="at" label={`When: ${button.toLowerCase()}`} withTime />}
      <SubmitButton kind={stops ? "stop" : quiet ? "quiet" : "main"}>{button}</SubmitButton>
      {!afterwards && (
        <details>
          <summary>at another time than now</summary>
          <DateField name="at" label="When" withTime optional />
        </details>
      )}
    </ActionForm>
  );
}
