import { dayAndTimeAt } from "@/app/_parts/dates";
import { Link } from "@/app/_parts/link";
import type { Level } from "@/lib/fit";
import styles from "./fitting.module.css";
import { type FittingVersion, whatWasPutRight } from "./what-was-put-right";

interface VersionsProps {
  /** The newest first. */
  versions: readonly (FittingVersion & { id: string; byName: string; recordedAt: Date; why: string | null })[];
  shownId: string;
  level: Level;
  timeZone: string;
  numbers: ReadonlyMap<string, number>;
}

/** Who put the fitting right, when, why, and what is different since. */
export function Versions({ versions, shownId, level, timeZone, numbers }: VersionsProps) {
  return (
    <section aria-labelledby="versions">
      <h2 id="versions">Versions</h2>
      <ol reversed>
        {versions.map((version, index) => {
          const before = versions[index + 1];
          const recorded = dayAndTimeAt(version.recordedAt, timeZone);
          return (
            <li key={version.id}>
              {version.id === shownId ? <strong>{recorded}</strong> : <Link href={`/fittings/${version.id}`}>{recorded}</Link>},{" "}
              {version.byName}
              {version.why && `: ${version.why}`}
              {before && <Changes changes={whatWasPutRight(before, version, { level, timeZone, numbers })} />}
            </li>
          );
        })}
      </ol>
    </section>
  );
}

function Changes({ changes }: { changes: readonly string[] }) {
  if (changes.length === 0) return <p className="soft">Nothing that was answered is different.</p>;
  return (
    <ul className={styles.changes}>
      {changes.map((change) => (
        <li key={change}>{change}</li>
      ))}
    </ul>
  );
}
