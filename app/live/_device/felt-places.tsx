import { feelingWords } from "@/app/_parts/skin-words";
import { aspects, type FeelingKind, thirds } from "@/lib/fit/words";
import styles from "./live.module.css";
import { heightWords, sideWords } from "./words";

/** Where each feeling is, for who can say. */
export function FeltPlaces({ felt }: { felt: readonly FeelingKind[] }) {
  return felt.map((kind) => (
    <p key={kind} className={styles.place}>
      <b>{feelingWords[kind]}</b>
      <select name={`${kind} aspect`} aria-label={`${feelingWords[kind]}: on which side?`} defaultValue="">
        <option value="">which side? (not said)</option>
        {aspects.map((aspect) => (
          <option key={aspect} value={aspect}>
            {sideWords[aspect]}
          </option>
        ))}
      </select>
      <select name={`${kind} third`} aria-label={`${feelingWords[kind]}: how far up?`} defaultValue="">
        <option value="">how far up? (not said)</option>
        {thirds.map((third) => (
          <option key={third} value={third}>
            {heightWords[third]}
          </option>
        ))}
      </select>
    </p>
  ));
}
