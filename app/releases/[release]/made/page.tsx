import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Choose } from "@/app/_parts/choices";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { DateField, HiddenField, TextArea } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { formatChange, formatNumber } from "@/app/_parts/numbers";
import { PageHead } from "@/app/_parts/page-head";
import { Rows } from "@/app/_parts/rows";
import { StateMark } from "@/app/_parts/state-mark";
import { SubmitButton } from "@/app/_parts/submit-button";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import type { ReadingState, Station } from "@/lib/fit";
import { toClinicTime } from "@/lib/records/clinic-time";
import { newId, now } from "@/lib/records/clock";
import { seeMadeChecks } from "@/lib/records/see-after-release";
import { check } from "./actions";
import styles from "./made.module.css";

export const metadata: Metadata = { title: "Made as specified?" };

/** The definitive socket came back: is it what the release sheet says? */
export default async function MadePage({ params }: { params: Promise<{ release: string }> }) {
  const { release } = await params;
  const actor = await requireActor(`/releases/${release}/made`);
  const { signOff, socketNumber, clinicNumber, limb, specified, checks } = await show(seeMadeChecks(actor, release));
  const closed = signOff.withdrawn || limb.deliveredAt !== null;
  return (
    <>
      <PageHead
        title="Made as specified?"
        about={
          <Link href={`/releases/${signOff.id}`}>
            Release of socket {socketNumber} of {clinicNumber}, {limb.side} {limb.level}
          </Link>
        }
      />
      {checks.length === 0 && <p className="soft">The definitive socket was not measured yet.</p>}
      {checks.map((made) => (
        <section key={made.id} aria-label={`Measured ${dayAndTimeAt(made.at, signOff.timeZone)}`} className={styles.check}>
          <p>
            <StateMark state={made.state as ReadingState} wrap>
              {outcomeWords[made.state as ReadingState]}
            </StateMark>
          </p>
          <p>{made.why}</p>
          <p className="soft">
            {made.byName}, {dayAndTimeAt(made.at, signOff.timeZone)}, by {made.method}
            {made.method === "tape" && ". A tape is too coarse to show that a socket was made as specified; a scan can."}
          </p>
          {made.note && <p>{made.note}</p>}
          <Levels specified={specified} made={made.stations} from={limb.stationsFrom} />
        </section>
      ))}
      {signOff.withdrawn && <p>This release was withdrawn: nothing is made from it.</p>}
      {limb.deliveredAt && (
        <p className="soft">The definitive socket was delivered {dayAndTimeAt(limb.deliveredAt, signOff.timeZone)}.</p>
      )}
      {!closed && specified.length > 1 && may(actor, "check a made socket") && (
        <section aria-labelledby="measure" className="not-on-paper">
          <h2 id="measure">Measure it{checks.length > 0 && " again"}</h2>
          <ActionForm action={check}>
            <HiddenField name="id" value={newId()} />
            <HiddenField name="signOffId" value={signOff.id} />
            <DateField name="at" label="When" withTime first={toClinicTime(now(), signOff.timeZone)} />
            <Choose
              name="method"
              label="How"
              options={[
                { value: "tape", label: "by tape, inside at each level" },
                { value: "scan", label: "from a scan of the inside" },
              ]}
            />
            <Rows
              name="stations"
              label="Inside circumferences"
              hint={`At the levels of the sheet, from the ${limb.stationsFrom}: ${specified.map(({ distanceMm, circumferenceMm }) => `${formatNumber(circumferenceMm, 1)} mm at ${formatNumber(distanceMm, 0)}`).join(", ")}.`}
              one="level"
              fields={[
                { name: "distanceMm", label: `from the ${limb.stationsFrom}`, kind: "number", unit: "mm" },
                { name: "circumferenceMm", label: "inside circumference", kind: "number", unit: "mm" },
              ]}
              first={specified.map(({ distanceMm }) => ({ distanceMm: String(distanceMm), circumferenceMm: "" }))}
              blank={0}
            />
            <TextArea name="note" label="Edges, trim lines, material, anything else" optional />
            <SubmitButton>Save the check</SubmitButton>
          </ActionForm>
        </section>
      )}
    </>
  );
}

const outcomeWords: Record<ReadingState, string> = {
  met: "made as specified",
  close: "made as specified, close to the limit",
  "not met": "not made as specified",
  unknown: "it cannot be shown that it was made as specified",
  forbids: "not made as specified",
};

function Levels({ specified, made, from }: { specified: readonly Station[]; made: readonly Station[]; from: string }) {
  return (
    <table>
      <thead>
        <tr>
          <th scope="col">from the {from}, mm</th>
          <th scope="col" className="n">
            sheet
          </th>
          <th scope="col" className="n">
            measured
          </th>
          <th scope="col" className="n">
            difference
          </th>
        </tr>
      </thead>
      <tbody>
        {made.map(({ distanceMm, circumferenceMm }) => {
          const asked = specified.find((level) => level.distanceMm === distanceMm)?.circumferenceMm;
          return (
            <tr key={distanceMm}>
              <th scope="row">{formatNumber(distanceMm, 0)}</th>
              <td className="n">{asked === undefined ? "between levels" : formatNumber(asked, 1)}</td>
              <td className="n">{formatNumber(circumferenceMm, 1)}</td>
              <td className="n">{asked === undefined ? "" : formatChange({ value: circumferenceMm - asked, unit: "mm" })}</td>
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}
