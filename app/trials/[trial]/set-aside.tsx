import { dayAndTimeAt } from "@/app/_parts/dates";
import { graveWords, type SetAside as Kept } from "@/lib/records/set-aside";
import styles from "./trial.module.css";

interface SetAsideProps {
  events: readonly Kept[];
  timeZone: string;
}

/** What came from a device and the trial could not take: kept as it came, with the reason. */
export function SetAside({ events, timeZone }: SetAsideProps) {
  if (events.length === 0) return null;
  return (
    <section aria-labelledby="set-aside">
      <h2 id="set-aside">Came and set aside</h2>
      <p className="soft">
        Sent by a device and kept as it came. What could not be read, or came too late for the trial, is judged nowhere, unless it
        says otherwise. Read it before you decide.
      </p>
      <ul>
        {events.map(({ id, event, why, receivedAt, judged, grave }) => (
          <li key={id} className={grave && !judged ? styles.grave : undefined}>
            {grave && !judged && <strong>{graveWords[grave]}, judged nowhere: </strong>}
            {sayAsSent(event)}. <strong>{why}</strong> <span className="soft">Came {dayAndTimeAt(receivedAt, timeZone)}.</span>
          </li>
        ))}
      </ul>
    </section>
  );
}

/** Each field as it came, in no other words: what could not be read is not interpreted. */
function sayAsSent(event: unknown): string {
  if (typeof event !== "object" || event === null) return String(event);
  return Object.entries(event)
    .filter(([field]) => field !== "id")
    .map(([field, value]) => `${field} ${typeof value === "string" ? value : JSON.stringify(value)}`)
    .join(", ");
}
