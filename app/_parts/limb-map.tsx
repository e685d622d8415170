import { useId } from "react";
import { MapKey } from "./hatches";
import { discWordsBox, LimbDrawing, viewWords } from "./limb-drawing";
import styles from "./limb-map.module.css";
import { mapBox, mapGeometry } from "./limb-map-geometry";
import { drawMarks, type MapMark } from "./limb-map-marks";
import type { DrawnLimb } from "./limb-shape";
import { MarkEllipse } from "./mark-ellipse";
import { markSentence } from "./mark-words";

export interface LimbMapProps extends DrawnLimb {
  /** Says aloud what the map is of: "Skin marks of socket 3, 1 minute after doffing". */
  title: string;
  marks: readonly MapMark[];
  /** Marks that are gone, as empty dotted outlines with their numbers. */
  gone?: readonly MapMark[];
  /** The words and the key of hatches below the map; left out where several maps stand in a row. */
  withKey?: boolean;
  /** Where the ellipses are no skin marks: what they are, in place of the words and the key of marks. */
  placesInWords?: string;
  /** In a wearer's words: front, back, and no figures. */
  plain?: boolean;
}

/** The limb's surface unrolled, to scale, with every skin mark at its place and size. Pictures and prints; no scripts. */
export function LimbMap({
  title,
  marks,
  gone = [],
  trimLine = [],
  trimWords,
  withKey = true,
  plain = false,
  placesInWords,
  ...shape
}: LimbMapProps) {
  const id = useId();
  const geometry = mapGeometry(shape);
  const drawn = drawMarks([...marks, ...gone], geometry, [discWordsBox(geometry)]);
  const isGone = (mark: MapMark) => gone.includes(mark);
  return (
    <figure className={styles.figure}>
      <svg
        viewBox={`${mapBox.left} 0 ${mapBox.width} ${geometry.height.toFixed(1)}`}
        role="img"
        aria-labelledby={`${id}-title`}
        aria-describedby={`${id}-words`}
        className={styles.map}
      >
        <title id={`${id}-title`}>{title}</title>
        <desc id={`${id}-words`}>{placesInWords ?? marksInWords(marks, gone, shape.limbLengthMm)}</desc>
        <LimbDrawing id={id} geometry={geometry} trimLine={trimLine} plain={plain} />
        {drawn.map((ellipse) => (
          <MarkEllipse
            key={ellipse.key}
            id={id}
            ellipse={ellipse}
            grade={isGone(ellipse.mark) ? null : ellipse.mark.grade}
            className={isGone(ellipse.mark) ? styles.gone : undefined}
          />
        ))}
        {drawn.map(({ key, number, mark, label }) => (
          <text
            key={key}
            x={label.x}
            y={label.y}
            dy="0.34em"
            textAnchor="middle"
            className={isGone(mark) ? styles.goneNumber : styles.number}
          >
            {number}
          </text>
        ))}
      </svg>
      {withKey && (
        <figcaption>
          <span className={styles.words}>
            {viewWords(shape, geometry)} {trimWords} {placesInWords}
          </span>
          {placesInWords === undefined && (
            <MapKey id={id} grades={marks.map(({ grade }) => grade)} trimLine={trimLine.length > 1} />
          )}
        </figcaption>
      )}
    </figure>
  );
}

function marksInWords(marks: readonly MapMark[], gone: readonly MapMark[], limbLengthMm: number): string {
  const words = [
    ...marks.map((mark, index) => markSentence(mark, mark.number ?? index + 1, limbLengthMm)),
    ...gone.map((mark, index) => `Mark ${mark.number ?? marks.length + index + 1}: gone.`),
  ];
  return words.length === 0 ? "No marks." : words.join(" ");
}
