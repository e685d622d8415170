import { adjustmentWords } from "@/app/_parts/adjustment-words";
import { HiddenField, NumberField, SelectField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { SubmitButton } from "@/app/_parts/submit-button";
import { wordOptions } from "@/app/_parts/word-options";
import { type Assessment, adjustmentKinds, adjustmentUnits, aspects, type Bundle, type Series, thirds } from "@/lib/fit";
import { choicesOfFindings } from "../findings";
import { carry, drop } from "./actions";
import styles from "./episode.module.css";

interface Props {
  bundle: Bundle;
  assessment: Assessment;
  series: Series;
  mayCarry: boolean;
}

/** Small adjustments that go straight into the definitive socket. */
export function Carried({ bundle, assessment, series, mayCarry }: Props) {
  if (!assessment.subject) return null;
  const { socketId } = assessment.subject;
  const found = series.findings.find((one) => one.socketId === socketId);
  const limits = assessment.gates.find(({ id }) => id === "open-adjustments");
  return (
    <section id="carried" aria-labelledby="carried-head">
      <h2 id="carried-head">Carried into the definitive socket</h2>
      <p className="soft">
        {bundle.carried.length === 0 ? "Nothing: the definitive socket would be a copy of the last check socket." : limits?.why}
      </p>
      <ul className={styles.list}>
        {bundle.carried.map((adjustment) => (
          <li key={adjustment.id}>
            <strong>{adjustmentWords(adjustment)}</strong> <small>for: {adjustment.reason}</small>
            {mayCarry && (
              <details>
                <summary>Take it back</summary>
                <ActionForm action={drop}>
                  <HiddenField name="adjustmentId" value={adjustment.id} />
                  <TextField name="why" label="Why it is taken back" size={40} />
                  <SubmitButton kind="quiet">Take back</SubmitButton>
                </ActionForm>
              </details>
            )}
          </li>
        ))}
      </ul>
      {mayCarry && (
        <details className={styles.carry}>
          <summary>Carry an adjustment</summary>
          <ActionForm action={carry}>
            <HiddenField name="socketId" value={socketId} />
            <SelectField name="kind" label="Kind" options={wordOptions(adjustmentKinds)} />
            <NumberField name="amount" label="Amount" optional />
            <SelectField
              name="unit"
              label="Unit"
              empty="none"
              options={adjustmentUnits.map((unit) => ({ value: unit, label: unit }))}
              optional
            />
            <SelectField name="aspect" label="Aspect" empty="all round" options={wordOptions(aspects)} optional />
            <SelectField name="third" label="Third" empty="whole length" options={wordOptions(thirds)} optional />
            <TextField name="reason" label="Reason" size={48} />
            <SelectField
              name="answers"
              label="Answers"
              empty="no single finding"
              options={choicesOfFindings(found, bundle.episode.level)}
              optional
            />
            <SubmitButton>Carry it</SubmitButton>
          </ActionForm>
        </details>
      )}
    </section>
  );
}
