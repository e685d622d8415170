import { dayAt, shortDay } from "@/app/_parts/dates";
import { HiddenField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { SubmitButton } from "@/app/_parts/submit-button";
import type { Bundle } from "@/lib/fit";
import { acknowledge } from "./actions";
import styles from "./episode.module.css";

/** What whoever touches this limb has to know, and whether a prosthetist has read it. */
export function Cautions({
  bundle,
  wearerId,
  episodeId,
  mayRead,
}: {
  bundle: Bundle;
  wearerId: string;
  episodeId: string;
  mayRead: boolean;
}) {
  const { cautions } = bundle.episode;
  const unread = cautions.filter(({ acknowledgedAt }) => acknowledgedAt === undefined);
  const read = cautions.findLast(({ acknowledgedAt }) => acknowledgedAt !== undefined);
  return (
    <div id="cautions" className={styles.cautions}>
      {cautions.length === 0 ? (
        <span className="soft">
          No caution is recorded; <Link href={`/wearers/${wearerId}`}>add one</Link> where one holds.
        </span>
      ) : (
        <span>
          <strong>{cautions.length === 1 ? "Caution" : "Cautions"}:</strong>{" "}
          {cautions.map(({ kind, note }) => kind.replaceAll("-", " ") + (note ? ` (${note})` : "")).join("; ")}
        </span>
      )}
      {cautions.some(({ kind }) => kind === "reduced-feeling") && (
        <span>Comfort and pain as told may not show harm: rely on the skin.</span>
      )}
      {read?.acknowledgedAt && (
        <span className="soft">
          read by {read.acknowledgedBy}, {shortDay(dayAt(read.acknowledgedAt, bundle.clinic.timeZone))}
        </span>
      )}
      {unread.length > 0 &&
        (mayRead ? (
          <ActionForm action={acknowledge}>
            <HiddenField name="episodeId" value={episodeId} />
            <SubmitButton kind="quiet">
              I have read {unread.length === 1 ? "this caution" : `these ${unread.length} cautions`}
            </SubmitButton>
          </ActionForm>
        ) : (
          <span>A prosthetist has not read {unread.length === 1 ? "it" : "all of them"} yet.</span>
        ))}
    </div>
  );
}
