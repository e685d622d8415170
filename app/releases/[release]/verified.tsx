import { Link } from "@/app/_parts/link";
import { StateMark } from "@/app/_parts/state-mark";
import type { ReleaseCheck } from "@/lib/exchange/verify-release";
import styles from "./verified.module.css";

const heads: Record<ReleaseCheck["verdict"], { state: "met" | "unknown" | "forbids"; words: string }> = {
  holds: { state: "met", words: "Checked now: what was signed is unaltered." },
  "cannot tell": { state: "unknown", words: "Checked now: part of it cannot be checked." },
  "does not hold": {
    state: "forbids",
    words: "Checked now: this is not what was signed, or not in force. Make nothing from it.",
  },
};

/** What became of the signature when the page was made: digest, key, and the evidence judged again. */
export function Verified({ check, releaseId, mayExport }: { check: ReleaseCheck; releaseId: string; mayExport: boolean }) {
  const { state, words } = heads[check.verdict];
  return (
    <section aria-labelledby="verified" className={styles.verified}>
      <h2 id="verified">
        <StateMark state={state} wrap>
          {words}
        </StateMark>
      </h2>
      <details open={check.verdict === "does not hold"}>
        <summary>What was checked, and how to check it elsewhere</summary>
        <ul>
          {check.findings.map(({ state: found, words: said }) => (
            <li key={said}>
              <StateMark state={found} wrap>
                {said}
              </StateMark>
            </li>
          ))}
        </ul>
        {mayExport && (
          <p>
            <Link href={`/releases/${releaseId}/file`}>The release as a file</Link> and{" "}
            <Link href="/releases/public-keys.json">the clinic’s public keys</Link>: with both,{" "}
            <code>npm run verify -- FILE --key KEYS</code> checks it on any machine that has this program and none of its records.
          </p>
        )}
      </details>
    </section>
  );
}
