import type { Metadata } from "next";
import Link from "next/link";
import { show } from "@/app/_forms/show";
import { adjustmentWords } from "@/app/_parts/adjustment-words";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { gateWords } from "@/app/_parts/gate-words";
import { LimbMap } from "@/app/_parts/limb-map";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { formatNumber } from "@/app/_parts/numbers";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { releaseFile } from "@/lib/exchange/release-file";
import { verifyRelease } from "@/lib/exchange/verify-release";
import { cautionForBench, placeOf, releaseSheet } from "@/lib/print/release-sheet";
import { clinicSettings } from "@/lib/records/clinic";
import { clinicPublicKeys } from "@/lib/records/clinic-signature";
import { awaitsCountersignature, releaseMeaning } from "@/lib/records/meanings";
import { type Evidence, seeRelease } from "@/lib/records/see-release";
import { Profile } from "./profile";
import styles from "./release.module.css";
import { Addenda, Countersigned, NotInForce } from "./since-signed";
import { Verified } from "./verified";

export const metadata: Metadata = { title: "Release sheet" };

export default async function ReleasePage({ params }: { params: Promise<{ release: string }> }) {
  const { release } = await params;
  const actor = await requireActor(`/releases/${release}`);
  const [{ signOff, evidence }, clinic] = await Promise.all([show(seeRelease(actor, release)), clinicSettings()]);
  const sheet = releaseSheet(evidence);
  const check = await verifyRelease(releaseFile(signOff), clinicPublicKeys());
  const isRelease = signOff.meaning === releaseMeaning;
  return (
    <>
      <nav aria-label="This sheet" className={styles.tools}>
        {may(actor, "see wearers") && <Link href={`/episodes/${signOff.episodeId}`}>Back to the episode</Link>}
        {!may(actor, "see wearers") && <Link href="/workshop">Back to the workshop</Link>}
        {may(actor, "withdraw a signature") && !signOff.withdrawal && (
          <Link href={`/releases/${signOff.id}/withdraw`}>Withdraw this signature</Link>
        )}
        {may(actor, "sign") && (
          <Link href={`/releases/${signOff.id}/addendum`} prefetch={false}>
            Put something right
          </Link>
        )}
        {may(actor, "sign") && awaitsCountersignature(signOff) && (
          <Link href={`/releases/${signOff.id}/countersign`} prefetch={false}>
            Countersign
          </Link>
        )}
        <span className="soft">Prints on A4 and Letter.</span>
      </nav>
      <article className={styles.sheet}>
        {signOff.withdrawal && (
          <p role="note" className={styles.withdrawn}>
            <strong>Withdrawn.</strong> {signOff.withdrawal.byName}, {dayAndTimeAt(signOff.withdrawal.at, signOff.timeZone)}:{" "}
            {signOff.withdrawal.why} Do not make anything from this sheet.
          </p>
        )}
        <NotInForce signOff={signOff} />
        <header className={styles.head}>
          <p>
            {clinic?.name}
            {clinic?.invented && " · invented data"}
          </p>
          <h1>{isRelease ? "Release for definitive fabrication" : "Wear trial accepted"}</h1>
          <p>
            Socket {sheet.socketNumber} of {evidence.bench.clinicNumber}, {sheet.limbWords}
          </p>
          <p className={styles.soft}>
            Signed {dayAndTimeAt(signOff.at, signOff.timeZone)} ({signOff.timeZone.replaceAll("_", " ")})
          </p>
        </header>
        {isRelease ? (
          <>
            <div className={styles.two}>
              <section>
                <h2>Inside dimensions</h2>
                <Dimensions sheet={sheet} from={evidence.bundle.episode.stationsFrom} />
              </section>
              <section>
                <h2>Profile</h2>
                <Profile dimensions={sheet.dimensions} />
              </section>
            </div>
            <div className={styles.two}>
              <section>
                <h2>Carried into the definitive socket</h2>
                {sheet.carried.length === 0 ? (
                  <p>Nothing: the definitive socket is a copy of check socket {sheet.socketNumber}.</p>
                ) : (
                  <ol className={styles.carried}>
                    {sheet.carried.map((adjustment) => (
                      <li key={adjustment.id}>
                        <strong>{adjustmentWords(adjustment)}</strong>
                        <br />
                        <span className={styles.soft}>{adjustment.reason}</span>
                      </li>
                    ))}
                  </ol>
                )}
                <h2>Make it from</h2>
                <dl className={styles.facts}>
                  {sheet.makeFrom.map(({ what, how }) => (
                    <div key={what}>
                      <dt>{what}</dt>
                      <dd>{how}</dd>
                    </div>
                  ))}
                </dl>
              </section>
              <section>
                <h2>On the limb map</h2>
                <CarriedMap evidence={evidence} />
              </section>
            </div>
            <section className={styles.warn}>
              <h2>Cautions for the bench</h2>
              <ul>
                {sheet.cautions.map((kind) => (
                  <li key={kind}>{cautionForBench[kind]}</li>
                ))}
                <li>
                  On return, measure the inside at every level. A tape cannot show a mean radial error of 0.25 mm, the limit for
                  making again: use a scan or a caliper where it matters.
                </li>
                <li>Follow local rules and the makers’ instructions.</li>
              </ul>
            </section>
          </>
        ) : (
          <p role="note" className={styles.warn}>
            <strong>This is no release.</strong> A prosthetist accepted the wear trial; nothing is made from this sheet. The
            release for definitive fabrication has a sheet of its own.
          </p>
        )}
        {sheet.conditions.length > 0 && (
          <section>
            <h2>Accepted with a reason</h2>
            <ul>
              {sheet.conditions.map(({ gate, by, why }) => (
                <li key={gate}>
                  <strong>{gateWords[gate as keyof typeof gateWords]}</strong>, by {by}: {why}
                </li>
              ))}
            </ul>
          </section>
        )}
        <section>
          <h2>Signed</h2>
          <p>
            <strong>{signOff.byName}</strong>, prosthetist{signOff.credentialsLine && `, ${signOff.credentialsLine}`}
          </p>
          <p>{signOff.statement}</p>
          <Countersigned signOff={signOff} />
          {evidence.closeRead.length > 0 && (
            <p>
              Read as close to their limit:{" "}
              {evidence.closeRead.map((gate) => gateWords[gate as keyof typeof gateWords].toLowerCase()).join(", ")}.
            </p>
          )}
          <p className={styles.digest}>SHA-256 of the evidence: {signOff.digest.match(/.{1,8}/g)?.join(" ")}</p>
          <p className={styles.soft}>
            Advice of this program rests on recorded findings; the prosthetist decides. Limits: {signOff.rulesVersion}.
          </p>
        </section>
        <Addenda signOff={signOff} />
      </article>
      <Verified check={check} releaseId={signOff.id} mayExport={may(actor, "see wearers")} />
    </>
  );
}

function Dimensions({ sheet, from }: { sheet: ReturnType<typeof releaseSheet>; from: string }) {
  if (sheet.dimensions.length === 0) return <p>No inside dimensions are on record.</p>;
  return (
    <>
      <table>
        <thead>
          <tr>
            <th scope="col">from {from}, mm</th>
            <th scope="col" className="n">
              limb
            </th>
            <th scope="col" className="n">
              socket {sheet.socketNumber}
            </th>
            <th scope="col" className="n">
              definitive
            </th>
          </tr>
        </thead>
        <tbody>
          {sheet.dimensions.map((level) => (
            <tr key={level.distanceMm}>
              <td>{formatNumber(level.distanceMm, 0)}</td>
              <td className="n">{level.limbMm === undefined ? "not measured" : formatNumber(level.limbMm, 1)}</td>
              <td className="n">{formatNumber(level.checkSocketMm, 1)}</td>
              <td className="n">
                <strong>{formatNumber(level.definitiveMm, 1)}</strong>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles.soft}>Circumferences in mm, by tape; its error is about 1.5 mm.</p>
    </>
  );
}

/** Where the carried adjustments go, drawn as the middle of the region that each names. */
function CarriedMap({ evidence }: { evidence: Evidence }) {
  const { episode, carried } = evidence.bundle;
  const marks = carried.flatMap((adjustment) => {
    const place = placeOf(adjustment, episode.limbLengthMm);
    if (!place) return [];
    return [
      {
        ...place,
        id: adjustment.id,
        widthMm: 30,
        heightMm: episode.limbLengthMm / 8,
        strength: "faint" as const,
        blanches: "not tested" as const,
        firm: false,
        warm: false,
        painful: false,
        broken: false,
        fadedAtMin: null,
        grade: 1,
      },
    ];
  });
  if (marks.length === 0) return <p>No carried adjustment names a place on the limb.</p>;
  return <LimbMap title="Where the carried adjustments go" {...limbShapeOf(evidence.bundle)} marks={marks} />;
}
