import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { dayAt, longDay } from "@/app/_parts/dates";
import { Empty } from "@/app/_parts/empty";
import { HiddenField, SelectField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { type MarkedState, StateMark } from "@/app/_parts/state-mark";
import { SubmitButton } from "@/app/_parts/submit-button";
import { wordOptions } from "@/app/_parts/word-options";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { cautionKinds } from "@/lib/fit";
import { clinicSettings } from "@/lib/records/clinic";
import { seeWearer } from "@/lib/records/see-wearers";
import { caution, endOfCaution } from "../actions";
import styles from "../wearers.module.css";

export const metadata: Metadata = { title: "Wearer" };

export default async function WearerPage({ params }: { params: Promise<{ wearer: string }> }) {
  const { wearer: wearerId } = await params;
  const actor = await requireActor(`/wearers/${wearerId}`);
  const [wearer, clinic] = await Promise.all([show(seeWearer(actor, wearerId)), clinicSettings()]);
  const timeZone = clinic?.timeZone ?? "UTC";
  return (
    <>
      <PageHead title={wearer.name} about={[wearer.clinicNumber, wearer.occupation].filter(Boolean).join(" · ")}>
        <Link className="button quiet" href={`/wearers/${wearer.id}/change`}>
          Change
        </Link>
        <Link className="button" href={`/wearers/${wearer.id}/new-episode`}>
          Open an episode
        </Link>
      </PageHead>
      <section aria-labelledby="episodes">
        <h2 id="episodes">Episodes</h2>
        {wearer.episodes.length === 0 ? (
          <Empty title="No episode yet" first={{ href: `/wearers/${wearer.id}/new-episode`, label: "Open an episode" }}>
            An episode is the fitting of one prosthesis to one limb: its series of check sockets, its fittings and trials, its
            release.
          </Empty>
        ) : (
          <table className={styles.list}>
            <thead>
              <tr>
                <th scope="col">Limb</th>
                <th scope="col">Stage</th>
                <th scope="col">Opened</th>
                <th scope="col">Decision and next step</th>
              </tr>
            </thead>
            <tbody>
              {wearer.episodes.map((episode) => (
                <tr key={episode.id}>
                  <td>
                    <Link href={`/episodes/${episode.id}`}>
                      {episode.side} {episode.level}
                    </Link>
                  </td>
                  <td>{episode.stage}</td>
                  <td>{longDay(dayAt(episode.openedAt, timeZone))}</td>
                  <td>
                    {episode.decision && <StateMark state={episode.decision as MarkedState} />} <small>{episode.nextWhy}</small>
                  </td>
                </tr>
              ))}
            </tbody>
          </table>
        )}
      </section>
      <div className={styles.two}>
        <section aria-labelledby="cautions">
          <h2 id="cautions">Cautions</h2>
          {wearer.cautions.length === 0 && (
            <p className="soft">None is recorded. That is not the same as none: ask, and write down what holds.</p>
          )}
          <ul className={styles.cautions}>
            {wearer.cautions.map((entry) => (
              <li key={entry.id} className={entry.endedAt ? styles.ended : undefined}>
                <strong>{entry.kind.replaceAll("-", " ")}</strong>
                {entry.note && `: ${entry.note}`}
                {entry.endedAt ? (
                  <small>
                    {" "}
                    no longer holds since {longDay(dayAt(entry.endedAt, timeZone))}: {entry.endedWhy}
                  </small>
                ) : (
                  may(actor, "acknowledge cautions") && (
                    <details>
                      <summary>It holds no longer</summary>
                      <ActionForm action={endOfCaution}>
                        <HiddenField name="cautionId" value={entry.id} />
                        <TextField name="why" label="Why it holds no longer" />
                        <SubmitButton kind="quiet">End this caution</SubmitButton>
                      </ActionForm>
                    </details>
                  )
                )}
              </li>
            ))}
          </ul>
          <details>
            <summary>Add a caution</summary>
            <ActionForm action={caution}>
              <HiddenField name="wearerId" value={wearer.id} />
              <SelectField name="kind" label="What to be careful of" options={wordOptions(cautionKinds)} />
              <TextField name="note" label="Where, since when, what follows" optional />
              <SubmitButton>Add the caution</SubmitButton>
            </ActionForm>
          </details>
        </section>
        <section aria-labelledby="known">
          <h2 id="known">What is known</h2>
          <dl className={styles.facts}>
            <dt>born</dt>
            <dd>{wearer.birthOn ? longDay(wearer.birthOn) : "not known"}</dd>
            <dt>body mass</dt>
            <dd>{wearer.bodyMassKg === null ? "not known" : `${wearer.bodyMassKg} kg`}</dd>
            <dt>body height</dt>
            <dd>{wearer.heightMm === null ? "not known" : `${wearer.heightMm} mm`}</dd>
            <dt>hand used most</dt>
            <dd>{wearer.handedness ?? "not known"}</dd>
          </dl>
        </section>
      </div>
    </>
  );
}
