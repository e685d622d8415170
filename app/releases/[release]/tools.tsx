import { Link } from "@/app/_parts/link";
import type { Actor } from "@/lib/access/actor";
import { may } from "@/lib/access/roles";
import { awaitsCountersignature } from "@/lib/records/meanings";
import type { SeenRelease } from "@/lib/records/see-release";
import styles from "./release.module.css";

/** What can be done with a sheet, by whoever looks at it. */
export function Tools({ signOff, actor }: { signOff: SeenRelease["signOff"]; actor: Actor }) {
  const maySign = may(actor, "sign");
  const here = `/releases/${signOff.id}`;
  return (
    <nav aria-label="This sheet" className={styles.tools}>
      {may(actor, "see wearers") ? (
        <Link href={`/episodes/${signOff.episodeId}`}>Back to the episode</Link>
      ) : (
        <Link href="/workshop">Back to the workshop</Link>
      )}
      <span>
        PDF: <a href={`${here}/sheet.pdf`}>A4</a> · <a href={`${here}/sheet.pdf?paper=letter`}>Letter</a>
      </span>
      {maySign && awaitsCountersignature(signOff) && <Link href={`${here}/countersign`}>Countersign</Link>}
      {maySign && <Link href={`${here}/addendum`}>Put something right</Link>}
      {may(actor, "withdraw a signature") && !signOff.withdrawal && (
        <Link href={`${here}/withdraw`}>Withdraw this signature</Link>
      )}
    </nav>
  );
}
