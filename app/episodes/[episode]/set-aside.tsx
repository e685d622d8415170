import { Link } from "@/app/_parts/link";
import { graveWords, type SetAside } from "@/lib/records/set-aside";
import styles from "./episode.module.css";

interface SetAsideNoticeProps {
  events: readonly SetAside[];
  episode: { sockets: readonly { id: string; number: number }[]; wearTrials: readonly { id: string; socketId: string }[] };
}

/** What devices sent for this episode and is judged nowhere: the decision beside it knows nothing of it. */
export function SetAsideNotice({ events, episode: { sockets, wearTrials } }: SetAsideNoticeProps) {
  const unjudged = events.filter(({ judged }) => !judged);
  if (unjudged.length === 0) return null;
  const numberOf = (trialId: string) => {
    const trial = wearTrials.find(({ id }) => id === trialId);
    return sockets.find(({ id }) => id === trial?.socketId)?.number;
  };
  const grave = unjudged.filter((one) => one.grave !== null);
  const other = unjudged.filter((one) => one.grave === null);
  const trials = [...new Set(unjudged.map(({ trialId }) => trialId))];
  return (
    <section aria-label="Set aside" className={grave.length > 0 ? styles.setAside : styles.cautions}>
      {grave.map((one) => (
        <p key={`${one.trialId} ${one.id}`}>
          <strong>{toldOf(one)}</strong>
        </p>
      ))}
      {other.length > 0 && (
        <p>
          {other.length === 1 ? "1 event" : `${other.length} events`} from a device {other.length === 1 ? "was" : "were"} set
          aside and {other.length === 1 ? "is" : "are"} judged nowhere: read {other.length === 1 ? "it" : "them"}.
        </p>
      )}
      {trials.map((trialId) => (
        <p key={trialId}>
          <Link href={`/trials/${trialId}#set-aside`}>What was set aside of the wear trial of socket {numberOf(trialId)}</Link>
        </p>
      ))}
    </section>
  );
}

function toldOf({ grave, afterSignature }: SetAside): string {
  const what = grave ? graveWords[grave] : "Something";
  return afterSignature
    ? `${what} came after the signature and is judged nowhere: look at it.`
    : `${what} was set aside and is judged nowhere: look at it.`;
}
