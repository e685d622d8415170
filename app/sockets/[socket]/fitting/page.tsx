import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { fittingParts, usualJoints } from "@/app/_parts/check-words";
import { Choose, Scale } from "@/app/_parts/choices";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { CheckBox, DateField, HiddenField, NumberField, TextArea, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { limbShapeOf, type SocketEdge } from "@/app/_parts/limb-shape";
import { MarkEditor } from "@/app/_parts/mark-editor";
import { PageHead } from "@/app/_parts/page-head";
import { Rows } from "@/app/_parts/rows";
import { SubmitButton } from "@/app/_parts/submit-button";
import { wordOptions } from "@/app/_parts/word-options";
import { requireActor } from "@/lib/access/session";
import { type Bundle, type Level, places } from "@/lib/fit";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeEpisodeOfSocket } from "@/lib/records/see-episode";
import { fit } from "./actions";
import styles from "./fitting.module.css";

export const metadata: Metadata = { title: "Record a fitting" };

export default async function FittingPage({ params }: { params: Promise<{ socket: string }> }) {
  const { socket: socketId } = await params;
  const actor = await requireActor(`/sockets/${socketId}/fitting`);
  const { episode, bundle } = await show(seeEpisodeOfSocket(actor, socketId));
  const socket = episode.sockets.find(({ id }) => id === socketId);
  const parts = fittingParts(bundle.episode.level);
  return (
    <>
      <PageHead title={`Fitting of socket ${socket?.number ?? ""}`} about={<EpisodeLink episode={episode} />} />
      <div className={styles.cols}>
        <nav aria-label="Parts of the fitting" className={styles.parts}>
          <ol>
            {[...parts.map(({ title }) => title), "Save"].map((title) => (
              <li key={title}>
                <a href={`#${anchor(title)}`}>{title}</a>
              </li>
            ))}
          </ol>
        </nav>
        <ActionForm action={fit}>
          <HiddenField name="id" value={newId()} />
          <HiddenField name="socketId" value={socketId} />
          <section className={styles.part} aria-label="Before donning">
            <h2>Before donning</h2>
            <div className={styles.row}>
              <DateField name="at" label="When" withTime first={toClinicTime(now(), bundle.clinic.timeZone)} />
              <TextField name="whoWasThere" label="Who was there" optional />
            </div>
            <Choose name="place" label="Where" options={wordOptions(places)} />
            <p className="soft">Nothing is chosen beforehand: a check that was not made counts as not made.</p>
          </section>
          {parts.map((part) => (
            <section key={part.title} id={anchor(part.title)} className={styles.part} aria-label={part.title}>
              <h2>{part.title}</h2>
              {part.checks.map(({ key, question, hint }) => (
                <Choose key={key} name={`checks.${key}`} label={question} {...(hint ? { hint } : {})} />
              ))}
              <PartExtras title={part.title} bundle={bundle} socket={socket} />
            </section>
          ))}
          <section id="save" className={styles.part} aria-label="Save">
            <TextArea name="note" label="Note" optional />
            <SubmitButton>Save the fitting</SubmitButton>
          </section>
        </ActionForm>
      </div>
    </>
  );
}

const anchor = (title: string): string => title.toLowerCase().replaceAll(" ", "-");

/** What is measured or asked in a part beside its checks. */
function PartExtras({ title, bundle, socket }: { title: string; bundle: Bundle; socket: SocketEdge | undefined }) {
  switch (title) {
    case "Lifting and pulling":
    case "Standing":
      return (
        <Rows
          name="pulls"
          label="Pulls"
          one="pull"
          hint="Pull along the limb with a spring balance and read how far the socket moved. Three loads or more show slack and give."
          fields={[
            { name: "loadN", label: "load", kind: "number", unit: "N" },
            { name: "displacementMm", label: "displaced", kind: "number", unit: "mm" },
          ]}
          blank={3}
        />
      );
    case "Moving":
      return <MotionRows level={bundle.episode.level} />;
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

function MotionRows({ level }: { level: Level }) {
  return (
    <Rows
      name="motion"
      label="Motion"
      one="movement"
      hint="Active motion, without and with the socket, by goniometer."
      fields={[
        { name: "joint", label: "movement", kind: "select", options: wordOptions(usualJoints(level)) },
        { name: "withoutDeg", label: "without", kind: "number", unit: "°" },
        { name: "withDeg", label: "with", kind: "number", unit: "°" },
      ]}
      blank={2}
    />
  );
}
