import { randomUUID } from "node:crypto";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { HiddenField, TextArea } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { SubmitButton } from "@/app/_parts/submit-button";
import type { Actor } from "@/lib/access/actor";
import { may } from "@/lib/access/roles";
import { awaitsCountersignature, releaseMeaning } from "@/lib/records/meanings";
import type { SeenRelease } from "@/lib/records/see-release";
import styles from "./bench.module.css";
import { acknowledge, answer, ask } from "./bench-actions";

type SignOff = SeenRelease["signOff"];

/** The bench says that it has read the sheet, and asks what is not clear; whoever signed answers. */
export function Bench({ signOff, actor }: { signOff: SignOff; actor: Actor }) {
  if (signOff.meaning !== releaseMeaning) return null;
  const { benchReadings, benchQuestions, timeZone } = signOff;
  const stands = !signOff.withdrawal && !awaitsCountersignature(signOff);
  const mayAsk = stands && may(actor, "acknowledge a release sheet");
  const hasRead = benchReadings.some(({ byId }) => byId === actor.id);
  const at = (instant: Date) => dayAndTimeAt(instant, timeZone);
  return (
    <section id="bench" aria-labelledby="bench-head" className={styles.bench}>
      <h2 id="bench-head">The bench</h2>
      {benchReadings.length === 0 && <p>Nobody at the bench has said yet that they read this sheet.</p>}
      {benchReadings.map(({ id, byName, at: read }) => (
        <p key={id}>
          {byName} read this sheet, {at(read)}.
        </p>
      ))}
      {mayAsk && !hasRead && (
        <ActionForm action={acknowledge}>
          <HiddenField name="signOffId" value={signOff.id} />
          <SubmitButton>I have read this sheet</SubmitButton>
        </ActionForm>
      )}
      {benchQuestions.length > 0 && (
        <dl className={styles.questions}>
          {benchQuestions.map((question) => (
            <div key={question.id}>
              <dt>
                {question.words}{" "}
                <small>
                  {question.byName}, {at(question.at)}
                </small>
              </dt>
              <dd>
                {question.answer ? (
                  <>
                    {question.answer.words}{" "}
                    <small>
                      {question.answer.byName}, {at(question.answer.at)}
                    </small>
                  </>
                ) : may(actor, "answer the bench") ? (
                  <ActionForm action={answer}>
                    <HiddenField name="questionId" value={question.id} />
                    <TextArea name="words" label="Your answer" rows={2} hint="The bench reads it: no clinical words." />
                    <SubmitButton>Answer</SubmitButton>
                  </ActionForm>
                ) : (
                  <span className="soft">Not answered yet.</span>
                )}
              </dd>
            </div>
          ))}
        </dl>
      )}
      {mayAsk && (
        <ActionForm action={ask}>
          <HiddenField name="signOffId" value={signOff.id} />
          <HiddenField name="id" value={randomUUID()} />
          <TextArea name="words" label="Ask about this sheet" rows={2} hint="A prosthetist of the clinic answers here." />
          <SubmitButton kind="quiet">Ask</SubmitButton>
        </ActionForm>
      )}
    </section>
  );
}
