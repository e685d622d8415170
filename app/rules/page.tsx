import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Advice } from "@/app/_parts/advice";
import { dayAt, longDay } from "@/app/_parts/dates";
import { CheckBox, HiddenField, NumberField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SourceLink } from "@/app/_parts/source-link";
import { SubmitButton } from "@/app/_parts/submit-button";
import { UnitFields } from "@/app/_parts/unit-fields";
import { may, permissions, roles, roleWords } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { type Limit, sourceKinds, sources } from "@/lib/fit";
import { clinicSettings } from "@/lib/records/clinic";
import { seeRules } from "@/lib/records/see-accounts";
import { change, changeCountersigning, changePhone, changeUnits } from "./actions";
import styles from "./rules.module.css";

export const metadata: Metadata = { title: "Rules" };

export default async function Rules() {
  const actor = await requireActor("/rules");
  const [{ limits, tape, changes }, clinic] = await Promise.all([show(seeRules(actor, null)), clinicSettings()]);
  const timeZone = clinic?.timeZone ?? "UTC";
  const mayChange = may(actor, "change a limit");
  return (
    <>
      <PageHead title="Rules" about={`In force: ${limits.version}`} />
      <p>
        Every limit that decides something, with its value, its unit and where it comes from. A published limit and common
        practice are not changed here; a clinic’s own settings are, by an administrator, with a reason.
      </p>
      <section aria-labelledby="limits">
        <h2 id="limits">Limits</h2>
        <table className={styles.limits}>
          <thead>
            <tr>
              <th scope="col">Limit</th>
              <th scope="col" className="n">
                Value
              </th>
              <th scope="col">May be set</th>
              <th scope="col">Comes from</th>
              <th scope="col">History</th>
            </tr>
          </thead>
          <tbody>
            {limits.list.map((limit) => (
              <tr key={limit.id} id={`limit-${limit.id}`}>
                <th scope="row">
                  {limit.name}
                  {limit.levels && limit.levels.length <= 3 && <small> {limit.levels.join(", ")}</small>}
                </th>
                <td className="n">
                  {Math.round(limit.value * 1000) / 1000} {limit.unit}
                </td>
                <td>{limit.kind === "clinic setting" ? `${limit.low} to ${limit.high}` : <span className="soft">no</span>}</td>
                <td>
                  <SourceLink source={limit.source} kinds={sourceKinds} />
                </td>
                <td>
                  {limit.id === "tape-error-mm" && <OwnTape tape={tape} />}
                  <History limit={limit} changes={changes} timeZone={timeZone} />
                  {mayChange && limit.kind === "clinic setting" && <ChangeLimit limit={limit} />}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section aria-labelledby="sources">
        <h2 id="sources">Sources</h2>
        <dl className={styles.sources}>
          {Object.entries(sources).map(([id, { kind, citation }]) => (
            <div key={id} id={id}>
              <dt>{kind}</dt>
              <dd>{citation}</dd>
            </div>
          ))}
        </dl>
        <p className="soft">“From memory” names a published work whose figure was not at hand to check.</p>
      </section>
      <section id="roles" aria-labelledby="roles-head">
        <h2 id="roles-head">Who may do what</h2>
        <table className={styles.roles}>
          <thead>
            <tr>
              <th scope="col">What</th>
              {roles.map((role) => (
                <th key={role} scope="col">
                  {roleWords[role]}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {permissions.map(([permission, holders]) => (
              <tr key={permission}>
                <th scope="row">{permission}</th>
                {roles.map((role) => (
                  <td key={role}>{holders.includes(role) ? "yes" : <span className="soft">–</span>}</td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </section>
      <section>
        <Advice />
      </section>
      {mayChange && clinic && (
        <section aria-labelledby="units">
          <h2 id="units">Units of the clinic</h2>
          <p className="soft">What everybody types and reads who has not chosen otherwise. What is kept is metric.</p>
          <ActionForm action={changeUnits}>
            <UnitFields first={clinic} />
            <SubmitButton>Save the units</SubmitButton>
          </ActionForm>
        </section>
      )}
      <section aria-labelledby="countersigning">
        <h2 id="countersigning">Countersigning</h2>
        <p>
          {clinic?.countersignReleases
            ? "A release is in force only once a second prosthetist has signed it as well."
            : "A release is in force with the signature of one prosthetist."}
        </p>
        {mayChange && (
          <ActionForm action={changeCountersigning}>
            <CheckBox
              name="asked"
              label="Ask for a second prosthetist’s signature on every release"
              hint="What was signed before stays as it was."
              first={clinic?.countersignReleases ? "yes" : ""}
            />
            <SubmitButton>Save</SubmitButton>
          </ActionForm>
        )}
      </section>
      {mayChange && clinic && (
        <section aria-labelledby="phone">
          <h2 id="phone">Telephone of the clinic</h2>
          <p className="soft">Wearers who record a wear trial on their own telephone are shown it, to call you.</p>
          <ActionForm action={changePhone}>
            <TextField name="phone" label="Telephone number" type="tel" optional first={clinic.phone ?? ""} />
            <SubmitButton>Save the number</SubmitButton>
          </ActionForm>
        </section>
      )}
    </>
  );
}

/** Where the tape error comes from: the clinic's own second readings, once there are enough, else the setting. */
function OwnTape({ tape }: { tape: Awaited<ReturnType<typeof seeRules>>["tape"] }) {
  const { inForceMm, value, pairs } = tape;
  if (inForceMm === null || value === undefined) return <p className="soft">{tape.why}</p>;
  const isHeld = Math.abs(inForceMm - value) > 0.005;
  return (
    <p>
      {inForceMm} mm is this clinic’s own, from {pairs} levels that were measured twice: s = √(Σd²/2n) = {value.toFixed(3)} mm (
      <a href={`#${tape.source}`}>published source</a>). It stands in place of the setting
      {isHeld ? ", held within its range" : ""}.
    </p>
  );
}

type Change = Awaited<ReturnType<typeof seeRules>>["changes"][number];

function History({ limit, changes, timeZone }: { limit: Limit; changes: Change[]; timeZone: string }) {
  const own = changes.filter(({ name }) => name === limit.id);
  return own.map((entry) => (
    <p key={entry.id} className="soft">
      {entry.value} {entry.unit} since {longDay(dayAt(entry.at, timeZone))}, {entry.byName}: {entry.why}
    </p>
  ));
}

function ChangeLimit({ limit }: { limit: Limit }) {
  return (
    <details>
      <summary>
        Change<span className="heard"> {limit.name}</span>
      </summary>
      <ActionForm action={change}>
        <HiddenField name="name" value={limit.id} />
        <NumberField name="value" label="New value" unit={limit.unit} first={String(limit.value)} />
        <TextField name="why" label="Why it is changed" />
        <SubmitButton kind="quiet">Change this limit</SubmitButton>
      </ActionForm>
    </details>
  );
}
