import { dayAndTimeAt } from "@/app/_parts/dates";
import { awaitsCountersignature } from "@/lib/records/meanings";
import styles from "./release.module.css";

interface Person {
  byName: string;
  credentialsLine?: string | null;
  at: Date;
}

interface Signed {
  timeZone: string;
  countersignAsked: boolean | null;
  countersignature: Person | null;
  withdrawal: Person | null;
  addenda: readonly (Person & { id: string; words: string })[];
}

/** Before anything else on the sheet: it is not to be made from yet. */
export function NotInForce({ signOff }: { signOff: Signed }) {
  if (!awaitsCountersignature(signOff)) return null;
  return (
    <p role="note" className={styles.withdrawn}>
      <strong>Not in force yet.</strong> A second prosthetist of this clinic has to sign this release as well. Do not make
      anything from this sheet.
    </p>
  );
}

export function Countersigned({ signOff }: { signOff: Signed }) {
  if (!signOff.countersignature) return null;
  const { byName, credentialsLine, at } = signOff.countersignature;
  return (
    <p>
      Countersigned by <strong>{byName}</strong>, prosthetist{credentialsLine && `, ${credentialsLine}`},{" "}
      {dayAndTimeAt(at, signOff.timeZone)}
    </p>
  );
}

export function Addenda({ signOff }: { signOff: Signed }) {
  if (signOff.addenda.length === 0) return null;
  return (
    <section className={styles.warn}>
      <h2>Put right since</h2>
      <ul>
        {signOff.addenda.map(({ id, words, byName, at }) => (
          <li key={id}>
            {words}{" "}
            <span className={styles.soft}>
              {byName}, {dayAndTimeAt(at, signOff.timeZone)}
            </span>
          </li>
        ))}
      </ul>
    </section>
  );
}
