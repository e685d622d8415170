import type { MapMark } from "./limb-map-marks";
import styles from "./mark-list.module.css";
import { fadeWords, findingWords, placeWords, positionWords, sizeWords } from "./mark-words";

interface MarkListProps {
  /** What the marks are of: "Skin marks, 1 minute after doffing". Heard, not seen. */
  caption: string;
  limbLengthMm: number;
  marks: readonly MapMark[];
}

/** The marks of the limb map as a table, with the same numbers; it says everything that the map shows. */
export function MarkList({ caption, limbLengthMm, marks }: MarkListProps) {
  if (marks.length === 0) return <p className="soft">No marks.</p>;
  return (
    <table className={styles.marks}>
      <caption className="heard">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="heard">number</span>
          </th>
          <th scope="col">where</th>
          <th scope="col">size</th>
          <th scope="col">found</th>
          <th scope="col">grade</th>
        </tr>
      </thead>
      <tbody>
        {marks.map((mark, index) => (
          <tr key={mark.id}>
            <th scope="row">{mark.number ?? index + 1}</th>
            <td>
              {placeWords(mark, limbLengthMm)}
              <small>{positionWords(mark)}</small>
            </td>
            <td>{sizeWords(mark)}</td>
            <td>
              {findingWords(mark)}
              {fadeWords(mark) && <small>{fadeWords(mark)}</small>}
            </td>
            <td>
              <span className={styles.narrow}>grade </span>
              {mark.grade}
            </td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}
