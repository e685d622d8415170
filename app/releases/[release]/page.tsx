import type { Metadata } from "next";
import { after } from "next/server";
import { codeOf } from "@/app/_forms/code-of";
import { show } from "@/app/_forms/show";
import { LimbMap } from "@/app/_parts/limb-map";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { CodeToScan } from "@/app/_parts/scannable-code";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { releaseFile } from "@/lib/exchange/release-file";
import { verifyRelease } from "@/lib/exchange/verify-release";
import { clinicSettings } from "@/lib/records/clinic";
import { clinicPublicKeys } from "@/lib/records/clinic-signature";
import { seeRelease } from "@/lib/records/see-release";
import { Bench } from "./bench";
import { carriedMapTitle, carriedMarks, carriedPlaces, noPlaceCarried } from "./carried-marks";
import { DigestAsked } from "./digest-asked";
import { Profile } from "./profile";
import styles from "./release.module.css";
import { sheetAddress } from "./sheet-address";
import { type SheetWords, sheetWords } from "./sheet-words";
import { Tools } from "./tools";
import { Verified } from "./verified";

export const metadata: Metadata = { title: "Release sheet" };

interface Asked {
  params: Promise<{ release: string }>;
  searchParams: Promise<{ digest?: string }>;
}

export default async function ReleasePage({ params, searchParams }: Asked) {
  const [{ release }, { digest }] = await Promise.all([params, searchParams]);
  const actor = await requireActor(`/releases/${release}${digest ? `?digest=${encodeURIComponent(digest)}` : ""}`);
  const [seen, clinic] = await Promise.all([show(seeRelease(actor, release)), clinicSettings()]);
  const { signOff, evidence } = seen;
  const withReasons = may(actor, "see wearers");
  const words = sheetWords(seen, { clinic, withReasons });
  const check = await verifyRelease(releaseFile(signOff), clinicPublicKeys());
  const address = sheetAddress(signOff);
  // Loaded only once the page is on its way.
  after(async () => (await import("./pdf/paper")).makePaperReady());
  return (
    <>
      <Tools signOff={signOff} actor={actor} />
      {digest !== undefined && <DigestAsked asked={digest} signOff={signOff} />}
      <article className={styles.sheet}>
        {words.stops.map(({ lead, words: said }) => (
          <p key={lead} role="note" className={styles.withdrawn}>
            <strong>{lead}</strong> {said}
          </p>
        ))}
        <header className={styles.head}>
          <p>{words.clinic}</p>
          <h1>{words.title}</h1>
          <p>{words.socket}</p>
          <p className={styles.soft}>{words.signedAt}</p>
        </header>
        {words.isRelease && <Making words={words} bundle={evidence.bundle} />}
        {words.accepted.length > 0 && (
          <section>
            <h2>Accepted with a reason</h2>
            <ul>
              {words.accepted.map(({ id, words: said, why }) => (
                <li key={id}>
                  {said}
                  {why && `: ${why}`}
                </li>
              ))}
            </ul>
          </section>
        )}
        {words.addenda.length > 0 && (
          <section className={styles.warn}>
            <h2>Put right since</h2>
            <ul>
              {words.addenda.map(({ id, words: said, by }) => (
                <li key={id}>
                  {said} <span className={styles.soft}>{by}</span>
                </li>
              ))}
            </ul>
          </section>
        )}
        <section className={styles.signed}>
          <div>
            <h2>Signed</h2>
            {words.signature.map((line, index) => (
              <p key={line}>{index === 0 ? <strong>{line}</strong> : line}</p>
            ))}
            <p className={styles.digest}>{words.digest}</p>
            {words.small.map((line) => (
              <p key={line} className={styles.soft}>
                {line}
              </p>
            ))}
          </div>
          <figure className={styles.scan}>
            <CodeToScan code={codeOf(address)} label="Code to scan: opens this sheet and compares its digest" />
            <figcaption className={styles.soft}>Scan to see whether this sheet stands.</figcaption>
          </figure>
        </section>
      </article>
      <Bench signOff={signOff} actor={actor} />
      <Verified check={check} releaseId={signOff.id} mayExport={withReasons} />
    </>
  );
}

function Making({ words, bundle }: { words: SheetWords; bundle: Parameters<typeof limbShapeOf>[0] }) {
  const marks = carriedMarks(bundle);
  return (
    <>
      <div className={styles.two}>
        <section>
          <h2>Inside dimensions</h2>
          <Dimensions words={words} />
        </section>
        <section>
          <h2>Profile</h2>
          <Profile dimensions={words.dimensions} />
        </section>
      </div>
      <div className={styles.two}>
        <section>
          <h2>Carried into the definitive socket</h2>
          {words.carried.length === 0 ? (
            <p>{words.nothingCarried}</p>
          ) : (
            <ol className={styles.carried}>
              {words.carried.map(({ id, words: said, why }) => (
                <li key={id}>
                  <strong>{said}</strong>
                  {why && (
                    <>
                      <br />
                      <span className={styles.soft}>{why}</span>
                    </>
                  )}
                </li>
              ))}
            </ol>
          )}
          <h2>Make it from</h2>
          <dl className={styles.facts}>
            {words.makeFrom.map(({ what, how }) => (
              <div key={what}>
                <dt>{what}</dt>
                <dd>{how}</dd>
              </div>
            ))}
          </dl>
        </section>
        <section>
          <h2>On the limb map</h2>
          {marks.length === 0 ? (
            <p>{noPlaceCarried}</p>
          ) : (
            <LimbMap title={carriedMapTitle} {...limbShapeOf(bundle)} marks={marks} placesInWords={carriedPlaces} />
          )}
        </section>
      </div>
      <section className={styles.warn}>
        <h2>Cautions for the bench</h2>
        <ul>
          {words.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
      </section>
      <section>
        <h2>When it comes back</h2>
        <ul>
          {words.onReturn.map((check) => (
            <li key={check}>{check}</li>
          ))}
        </ul>
      </section>
    </>
  );
}

function Dimensions({ words }: { words: SheetWords }) {
  if (words.dimensionRows.length === 0) return <p>No inside dimensions are on record.</p>;
  const [from, ...measured] = words.dimensionHeads;
  return (
    <>
      <table>
        <thead>
          <tr>
            <th scope="col">{from}</th>
            {measured.map((head) => (
              <th key={head} scope="col" className="n">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {words.dimensionRows.map(([distance, limb, checkSocket, definitive]) => (
            <tr key={distance}>
              <th scope="row">{distance}</th>
              <td className="n">{limb}</td>
              <td className="n">{checkSocket}</td>
              <td className="n">
                <strong>{definitive}</strong>
              </td>
            </tr>
          ))}
        </tbody>
      </table>
      <p className={styles.soft}>{words.dimensionsNote}</p>
    </>
  );
}
