import { FindKey } from "./find-key";
import styles from "./frame.module.css";

const fieldId = "find";

/** Finds a wearer by name or clinic number: an ordinary GET form, so that what was sought stands in the address. */
export function FindField() {
  return (
    <search className={styles.find}>
      <form action="/wearers">
        <label htmlFor={fieldId} className="heard">
          Find a wearer by name or number
        </label>
        <input
          id={fieldId}
          name="find"
          type="search"
          placeholder="Name or clinic number"
          autoComplete="off"
          aria-keyshortcuts="/"
        />
        <FindKey fieldId={fieldId} className={styles.key} />
      </form>
    </search>
  );
}
