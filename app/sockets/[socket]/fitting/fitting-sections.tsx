import type { ReactNode } from "react";
import { fittingParts, usualJoints } from "@/app/_parts/check-words";
import { Choose, Scale } from "@/app/_parts/choices";
import { CheckBox, DateField, NumberField, TextArea, TextField } from "@/app/_parts/fields";
import { limbShapeOf, type SocketEdge } from "@/app/_parts/limb-shape";
import { MarkEditor } from "@/app/_parts/mark-editor";
import { MotionField } from "@/app/_parts/motion-field";
import { PullsField } from "@/app/_parts/pulls-field";
import { wordOptions } from "@/app/_parts/word-options";
import { type Bundle, type Limits, motionRule, places, reportedParts, suspensionRule } from "@/lib/fit";
import styles from "./fitting.module.css";
import { LeftFree, PartsNav } from "./parts-nav";
import { anchor } from "./progress";

interface FittingSectionsProps {
  bundle: Bundle;
  limits: Limits;
  socket: SocketEdge | undefined;
  /** When it is, on the clinic's clock. */
  at: string;
  /** What ends the form: why it is put right, and the button. */
  children: ReactNode;
}

/** A fitting in the order of the work. Nothing is chosen beforehand. */
export function FittingSections({ bundle, limits, socket, at, children }: FittingSectionsProps) {
  const { level } = bundle.episode;
  return (
    <div className={styles.cols}>
      <PartsNav level={level} />
      <div className={styles.sections}>
        <p className={styles.keys}>
          By keyboard: 1, 2, 3 or 4 answers a check and goes on to the next; arrows choose too. A figure rates comfort and pain.
          Enter goes on to the next field, Ctrl and Enter save.
        </p>
        <section id="before-donning" data-part="" className={styles.part} aria-labelledby="before-donning-title">
          <h2 id="before-donning-title">Before donning</h2>
          <div className={styles.row}>
            <DateField name="at" label="When" withTime first={at} />
            <TextField name="whoWasThere" label="Who was there" optional />
          </div>
          <Choose name="place" label="Where" options={wordOptions(places)} />
          <p className="soft">Nothing is chosen beforehand: a check that was not made counts as not made.</p>
        </section>
        {fittingParts(level).map(({ title, checks }) => (
          <section key={title} id={anchor(title)} data-part="" className={styles.part} aria-labelledby={`${anchor(title)}-title`}>
            <h2 id={`${anchor(title)}-title`}>{title}</h2>
            <div>
              {checks.map(({ key, question, hint }) => (
                <Choose key={key} name={`checks.${key}`} label={question} {...(hint ? { hint } : {})} />
              ))}
            </div>
            <PartExtras title={title} bundle={bundle} limits={limits} socket={socket} />
          </section>
        ))}
        <section id="save" data-part="" className={styles.part} aria-labelledby="save-title">
          <h2 id="save-title">Save</h2>
          <TextArea name="note" label="Note" optional />
          <Told />
          <LeftFree level={level} />
          {children}
        </section>
      </div>
    </div>
  );
}

/** Over a video call or from another's notes: what the recorder neither saw nor measured. */
function Told() {
  return (
    <details className={styles.told}>
      <summary>Not all of it was seen or measured by me</summary>
      <TextField name="measuredBy" label="Who measured" optional />
      <fieldset className={styles.boxes}>
        <legend>Told to me, not seen by me</legend>
        {reportedParts.map((part) => (
          <CheckBox key={part} name={`told.${part}`} label={part} />
        ))}
      </fieldset>
    </details>
  );
}

/** What is measured or asked in a part beside its checks. */
function PartExtras({
  title,
  bundle,
  limits,
  socket,
}: {
  title: string;
  bundle: Bundle;
  limits: Limits;
  socket: SocketEdge | undefined;
}) {
  const { episode } = bundle;
  switch (title) {
    case "Lifting and pulling":
    case "Standing":
      return <PullsField rule={suspensionRule(episode, limits)} />;
    case "Moving":
      return (
        <MotionField rules={usualJoints(episode.level).map((joint) => ({ joint, rule: motionRule(joint, episode, limits) }))} />
      );
    case "What the wearer says":
      return (
        <>
          <Scale name="comfort" label="How comfortable is the socket?" ends={["worst", "best imaginable"]} none="not asked" />
          <Scale name="pain" label="Pain" ends={["none", "worst imaginable"]} none="not asked" />
          <TextArea name="words" label="In the wearer’s own words" optional />
        </>
      );
    case "Doffing and skin":
      return (
        <>
          <NumberField
            name="look.minutesAfterDoffing"
            label="Skin looked at, minutes after doffing"
            unit="min"
            optional
            hint="Leave it free if the skin was not looked at."
          />
          <MarkEditor name="look.marks" limb={limbShapeOf(bundle, socket)} minutes={{ name: "look.minutesAfterDoffing" }} />
          <CheckBox name="look.noMarks" label="No mark anywhere" hint="Tick it only after looking all round, and at the end." />
        </>
      );
    default:
      return null;
  }
}
