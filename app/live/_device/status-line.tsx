import styles from "./live.module.css";
import type { Shown } from "./trial-on-device";

/** Whether what was pressed is safe: on this device, and with the clinic. Always in sight; said aloud when it changes. */
export function StatusLine({ shown, isOwn }: { shown: Shown; isOwn: boolean }) {
  const { items, notKept, line, trial, isHeard, unkept, failed } = shown;
  const toSend = items.filter(({ state }) => state === "to send");
  const waiting = toSend.length;
  const onlyHere = toSend.filter(({ id }) => unkept.has(id)).length;
  const aside = items.filter(({ state }) => state === "set aside");
  return (
    <div className={styles.status}>
      <p role="status" className={notKept || line === "refused" ? styles.wrong : undefined}>
        {notKept
          ? keptNowhere(notKept, onlyHere)
          : waiting === 0
            ? sentWords({ isHeard, line, failed, isOwn })
            : onlyHere > 0
              ? "Keeping it on this device…"
              : `Kept on this device: ${waiting} to send.`}{" "}
        {waiting > 0 && onlyHere === 0 && whyNotSent(line, isOwn)}
        {line === "signed out" && !isOwn && (
          <a href={`/sign-in?back=${encodeURIComponent(`/live/trial#${trial?.trialId ?? ""}`)}`}>Sign in to send</a>
        )}
      </p>
      {aside.length > 0 && (
        <p className={styles.wrong}>
          {aside.length === 1 ? "One entry" : `${aside.length} entries`} could not be added to the trial. The clinic has{" "}
          {aside.length === 1 ? "it" : "them"} and will see why: {[...new Set(aside.map(({ why }) => why))].join(" ")}
        </p>
      )}
    </div>
  );
}

/** That all is sent must not read as being in touch. */
function sentWords({ isHeard, line, failed, isOwn }: Pick<Shown, "isHeard" | "line" | "failed"> & { isOwn: boolean }): string {
  if (failed && (failed.failed === "refused" || failed.failed === "signed out"))
    return isOwn ? `Your clinic has ended this link. ${whatThen}` : failed.why;
  if (line === "offline" || !isHeard)
    return "Nothing is left to send. The clinic is not in touch now: if it says stop, this page does not hear it.";
  return "All sent to the clinic.";
}

const whatThen =
  "If you wear the socket, take it off, look at the skin at once and after 5, 10 and 20 minutes, and call the clinic.";

function keptNowhere(why: "full" | "forbidden", onlyHere: number): string {
  const store = why === "full" ? "This device’s store is full" : "This browser keeps nothing for this page";
  return onlyHere > 0
    ? `${store}: ${onlyHere} not kept and not sent yet. Leave this page open until it says that all is sent.`
    : `${store}. What was pressed is sent; leave this page open.`;
}

function whyNotSent(line: Shown["line"], isOwn: boolean): string {
  if (line === "offline") return "No network; sent as soon as there is one.";
  if (line === "signed out")
    return isOwn ? `This link is over; ask your clinic for a new one. ${whatThen}` : "This device is signed out at the clinic. ";
  if (line === "refused") return "The clinic’s server does not take it; it stays here. Call the clinic.";
  return "";
}
