import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { fittingParts } from "@/app/_parts/check-words";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { EpisodeLink } from "@/app/_parts/episode-link";
import { Link } from "@/app/_parts/link";
import { numbersOfMarks } from "@/app/_parts/mark-numbers";
import { PageHead } from "@/app/_parts/page-head";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { type Bundle, type FittingRecord, motion, motionRule, suspension, suspensionRule } from "@/lib/fit";
import { seeFitting } from "@/lib/records/see-fitting";
import styles from "./fitting.module.css";
import { Looks } from "./fitting-looks";
import { Versions } from "./fitting-versions";
import { placesInWords, pullsInWords } from "./what-was-put-right";

export const metadata: Metadata = { title: "Fitting" };

/** One fitting as it was recorded, with what was put right since. */
export default async function FittingPage({ params }: { params: Promise<{ fitting: string }> }) {
  const { fitting: fittingId } = await params;
  const actor = await requireActor(`/fittings/${fittingId}`);
  const { episode, bundle, fitting, shown, versions, looks, limits } = await show(seeFitting(actor, fittingId));
  const { timeZone } = bundle.clinic;
  const socket = episode.sockets.find(({ id }) => id === shown.socketId);
  const record = recordOf(shown);
  const isNewest = shown.id === fitting.id;
  const signed = episode.signOffs.find((signOff) => signOff.socketId === shown.socketId && signOff.withdrawal === null);
  const numbers = numbersOfMarks(versions.flatMap((version) => version.looks));
  return (
    <>
      <PageHead title={`Fitting of socket ${socket?.number ?? ""}`} about={<EpisodeLink episode={episode} />}>
        {isNewest && !signed && may(actor, "record a fitting") && (
          <Link className="button quiet" href={`/fittings/${shown.id}/correct`}>
            Put it right
          </Link>
        )}
        {isNewest && !signed && may(actor, "look at the skin") && (
          <Link className="button quiet" href={`/fittings/${shown.id}/look`}>
            Look at the skin again
          </Link>
        )}
      </PageHead>
      <p>
        {dayAndTimeAt(shown.at, timeZone)}, {placesInWords[record.place]}
        {shown.whoWasThere && `, with ${shown.whoWasThere}`}. Recorded by {shown.byName},{" "}
        {dayAndTimeAt(shown.recordedAt, timeZone)}.{shown.measuredBy && ` Measured by ${shown.measuredBy}.`}
      </p>
      {!isNewest && (
        <p className={styles.older} role="note">
          <strong>This version was put right.</strong> <Link href={`/fittings/${fitting.id}`}>Read the one that counts</Link>.
        </p>
      )}
      {signed && <p className="soft">{signed.byName} signed for this socket; the fitting is locked.</p>}
      {versions.length > 1 && (
        <Versions versions={versions} shownId={shown.id} level={bundle.episode.level} timeZone={timeZone} numbers={numbers} />
      )}
      <div className={styles.two}>
        <Checks record={record} bundle={bundle} />
        <div>
          <Pulls record={record} bundle={bundle} limits={limits} />
          <Motion record={record} bundle={bundle} limits={limits} />
          <section aria-labelledby="said">
            <h2 id="said">What the wearer says</h2>
            <p>
              Comfort {shown.comfort ?? "not asked"}
              {shown.comfort !== null && " of 10"}, pain {shown.pain ?? "not asked"}
              {shown.pain !== null && " of 10"}.
            </p>
            {shown.words && (
              <blockquote>
                <q>{shown.words}</q>
              </blockquote>
            )}
            {shown.note && <p>{shown.note}</p>}
          </section>
        </div>
      </div>
      <section id="skin" className={styles.skin} aria-labelledby="looks">
        <h2 id="looks">Skin {told(record, "skin")}</h2>
        {!isNewest && <p className="soft">As it stood in this version.</p>}
        <Looks looks={looks} bundle={bundle} numbers={numbers} />
      </section>
    </>
  );
}

type Shown = Awaited<ReturnType<typeof seeFitting>>["shown"];

const recordOf = (row: Shown) => ({
  place: row.place as FittingRecord["place"], // the columns hold only what the command's schema let pass
  checks: row.checks as FittingRecord["checks"],
  pulls: row.pulls as FittingRecord["pulls"],
  motion: row.motion as FittingRecord["motion"],
  reported: (row.reported ?? []) as NonNullable<FittingRecord["reported"]>,
});

type Recorded = ReturnType<typeof recordOf>;
type Limits = Awaited<ReturnType<typeof seeFitting>>["limits"];

function told({ reported }: Recorded, part: Recorded["reported"][number]) {
  return reported.includes(part) && <small className={styles.told}>told, not seen</small>;
}

function Checks({ record, bundle }: { record: Recorded; bundle: Bundle }) {
  const checks = fittingParts(bundle.episode.level).flatMap((part) => part.checks);
  return (
    <section aria-labelledby="checks">
      <h2 id="checks">Checks {told(record, "checks")}</h2>
      <table>
        <tbody>
          {checks.map(({ key, question }) => (
            <tr key={key}>
              <th scope="row" className={styles.question}>
                {question}
              </th>
              <td>{record.checks[key] === undefined ? "not done" : record.checks[key]}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </section>
  );
}

function Pulls({ record, bundle, limits }: { record: Recorded; bundle: Bundle; limits: Limits }) {
  const { why } = suspension(record.pulls, suspensionRule(bundle.episode, limits));
  return (
    <section aria-labelledby="pulls">
      <h2 id="pulls">Pulls {told(record, "pulls")}</h2>
      {record.pulls.length > 0 && <p>{pullsInWords(record.pulls)}.</p>}
      <p className="soft">{why}</p>
    </section>
  );
}

function Motion({ record, bundle, limits }: { record: Recorded; bundle: Bundle; limits: Limits }) {
  return (
    <section aria-labelledby="motion">
      <h2 id="motion">Motion {told(record, "motion")}</h2>
      {record.motion.length === 0 && <p className="soft">Not measured.</p>}
      {record.motion.map(({ joint, withoutDeg, withDeg }) => (
        <p key={joint}>
          <strong>{joint.replaceAll("-", " ")}</strong>{" "}
          {motion(withoutDeg, withDeg, motionRule(joint, bundle.episode, limits)).why}
        </p>
      ))}
    </section>
  );
}
