import { type Against, fewestSockets, mostSockets } from "@/lib/fit";
import type { SeenSideBySide } from "@/lib/records/see-side-by-side";
import styles from "./side-by-side.module.css";

interface ChooseProps {
  seen: SeenSideBySide;
  against: Against;
  address: string;
  /** Where nothing can be compared yet. */
  open: boolean;
}

/** Which sockets stand beside each other. A GET form: the choice is in the address, and works without scripts. */
export function Choose({ seen: { chosen, offered, leftOut, episode }, against, address, open }: ChooseProps) {
  const isChosen = (id: string) => chosen.some(({ socketId }) => socketId === id);
  const problem = problemOf(chosen.length, offered.length);
  return (
    <details className={`${styles.choose} not-on-paper`} open={open}>
      <summary>Choose other sockets</summary>
      <form action={address}>
        {open && problem && (
          <p role="alert" className={styles.problem}>
            {problem}
          </p>
        )}
        {leftOut.map(({ socketId, why }) => (
          <p key={socketId} className={styles.problem}>
            A socket of the address was left out. {why}
          </p>
        ))}
        <fieldset className={styles.boxes}>
          <legend>Sockets, two to four</legend>
          {offered.map(({ socketId, number, episodeId, side, level }) => (
            <label key={socketId}>
              <input type="checkbox" name="socket" value={socketId} defaultChecked={isChosen(socketId)} />
              {number}
              {episodeId !== episode.id && `, ${side} ${level}`}
            </label>
          ))}
        </fieldset>
        <fieldset className={styles.boxes}>
          <legend>Each is held against</legend>
          <label>
            <input type="radio" name="against" value="before" defaultChecked={against === "before"} />
            the one before it
          </label>
          <label>
            <input type="radio" name="against" value="first" defaultChecked={against === "first"} />
            the first of them
          </label>
        </fieldset>
        <button type="submit" className="quiet">
          Compare
        </button>
      </form>
    </details>
  );
}

function problemOf(chosen: number, offered: number): string | undefined {
  if (offered < fewestSockets) return "There is only one socket so far: a second one is needed for a comparison.";
  if (chosen > mostSockets) return `Choose two to four sockets: ${chosen} are chosen. Take some away.`;
  if (chosen < fewestSockets)
    return chosen === 0 ? "Choose two to four sockets." : "Choose two to four sockets: one is chosen. Take another.";
  return undefined;
}
