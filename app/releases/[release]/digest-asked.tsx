import { StateMark } from "@/app/_parts/state-mark";
import { awaitsCountersignature } from "@/lib/records/meanings";
import type { SeenRelease } from "@/lib/records/see-release";
import styles from "./verified.module.css";

/** For whoever scanned the code of a paper sheet: is it this one, and does it stand? */
export function DigestAsked({ asked, signOff }: { asked: string; signOff: SeenRelease["signOff"] }) {
  const isThis = asked.toLowerCase().replaceAll(/\s/g, "") === signOff.digest;
  const stands = isThis && !signOff.withdrawal && !awaitsCountersignature(signOff);
  return (
    <p role="status" className={styles.verified}>
      <StateMark state={stands ? "met" : "forbids"} wrap>
        {!isThis
          ? "The digest on your sheet is not the one of this signature. Your sheet was altered, or belongs to another release. Make nothing from it."
          : signOff.withdrawal
            ? "Your sheet is this one, and it was withdrawn. Make nothing from it."
            : awaitsCountersignature(signOff)
              ? "Your sheet is this one, and it is not in force yet. Make nothing from it."
              : "Your sheet is this one, and it stands."}
      </StateMark>
    </p>
  );
}
