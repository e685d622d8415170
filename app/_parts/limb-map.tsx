import { useId } from "react";
import { aspects } from "@/lib/fit/words";
import { fillOf, HatchPatterns, MapKey } from "./hatches";
import styles from "./limb-map.module.css";
import {
  type LimbPlace,
  type LimbShape,
  type MapGeometry,
  mapBox,
  mapGeometry,
  outlineOf,
  type Point,
  trimPoints,
} from "./limb-map-geometry";
import { type DrawnMark, drawMarks, type MapMark } from "./limb-map-marks";
import { markSentence } from "./mark-words";

export interface LimbMapProps extends LimbShape {
  /** Says aloud what the map is of: "Skin marks of socket 3, 1 minute after doffing". */
  title: string;
  marks: readonly MapMark[];
  /** Two or more places along the edge of the socket, in any order. */
  trimLine?: readonly LimbPlace[] | undefined;
  /** The key of hatches below the map; left out where several maps stand in a row. */
  withKey?: boolean;
}

/** The limb's surface unrolled, to scale, with every skin mark at its place and size. Pictures and prints; no scripts. */
export function LimbMap({ title, marks, trimLine = [], withKey = true, ...shape }: LimbMapProps) {
  const id = useId();
  const geometry = mapGeometry(shape);
  const drawn = drawMarks(marks, geometry, [discWordsBox(geometry)]);
  const outline = pointsText(outlineOf(geometry));
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
        <desc id={`${id}-words`}>{marksInWords(marks, shape.limbLengthMm)}</desc>
        <defs>
          <HatchPatterns id={id} />
          <clipPath id={`${id}-wall`}>
            <polygon points={outline} />
          </clipPath>
          <clipPath id={`${id}-disc`}>
            <circle cx={geometry.disc.x} cy={geometry.disc.y} r={geometry.disc.radius} />
          </clipPath>
        </defs>
        <polygon points={outline} className={styles.skin} />
        <Levels geometry={geometry} />
        <Aspects geometry={geometry} />
        <Disc geometry={geometry} />
        {trimLine.length > 1 && <polyline points={pointsText(trimPoints(trimLine, geometry))} className={styles.trim} />}
        {drawn.map((mark) => (
          <MarkEllipse key={mark.key} id={id} mark={mark} />
        ))}
        {drawn.map(({ key, number, label }) => (
          <text key={key} x={label.x} y={label.y} dy="0.34em" textAnchor="middle" className={styles.number}>
            {number}
          </text>
        ))}
      </svg>
      <figcaption>
        <span className={styles.words}>
          {viewWords(shape.side)} {geometry.toScaleAcross ? "To scale." : "Not to scale across: circumferences are not known."}
        </span>
        {withKey && <MapKey id={id} grades={marks.map(({ grade }) => grade)} trimLine={trimLine.length > 1} />}
      </figcaption>
    </figure>
  );
}

function marksInWords(marks: readonly MapMark[], limbLengthMm: number): string {
  return marks.length === 0 ? "No marks." : marks.map((mark, index) => markSentence(mark, index + 1, limbLengthMm)).join(" ");
}

const viewWords = (side: LimbShape["side"]): string =>
  `${side === "left" ? "Left" : "Right"} limb seen from the front, unrolled from the posterior midline: lateral is on the ${side === "left" ? "right" : "left"}.`;

/** Half of "posterior" and half of "anterior" at their largest, in units of the drawing. */
const roomForName = 70;

function Aspects({ geometry }: { geometry: MapGeometry }) {
  const { limbLengthMm, pointOf, top, centreX, circumferenceAt, unitsPerMm } = geometry;
  // On a slender limb the names at the seam move outwards, so that the four do not touch.
  const apart = Math.max(0, roomForName - (circumferenceAt(limbLengthMm) * unitsPerMm) / 4);
  return (
    <g>
      {aspects.map((aspect, quarter) => {
        const angleDeg = quarter * 90;
        // The posterior midline is the seam: both edges carry its name, and the outline its line.
        const turns = aspect === "posterior" ? [0, 1] : [0];
        return turns.map((turn) => {
          const above = pointOf({ angleDeg, distanceFromEndMm: limbLengthMm }, turn);
          const below = pointOf({ angleDeg, distanceFromEndMm: 0 }, turn);
          return (
            <g key={`${aspect} ${turn}`}>
              {aspect !== "posterior" && (
                <path
                  d={`M${above.x.toFixed(1)} ${above.y}L${below.x.toFixed(1)} ${below.y.toFixed(1)}`}
                  className={styles.line}
                />
              )}
              <text
                x={aspect === "posterior" ? above.x + Math.sign(above.x - centreX) * apart : above.x}
                y={top - 13}
                textAnchor="middle"
                className={styles.label}
              >
                {aspect}
              </text>
            </g>
          );
        });
      })}
    </g>
  );
}

/** Lines at the thirds and at the rim of the distal end; distances in mm beside them. */
function Levels({ geometry }: { geometry: MapGeometry }) {
  const { limbLengthMm, bottom, unitsPerMm, circumferenceAt, centreX, disc } = geometry;
  const yOf = (distanceMm: number) => bottom - distanceMm * unitsPerMm;
  const across = (distanceMm: number) => {
    const half = (circumferenceAt(distanceMm) * unitsPerMm) / 2;
    return `M${(centreX - half).toFixed(1)} ${yOf(distanceMm).toFixed(1)}h${(2 * half).toFixed(1)}`;
  };
  const thirds = [limbLengthMm / 3, (limbLengthMm * 2) / 3];
  const roomForThirds = (limbLengthMm * unitsPerMm) / 3 > 22;
  return (
    <g>
      {thirds.map((distanceMm) => (
        <path key={distanceMm} d={across(distanceMm)} className={styles.line} />
      ))}
      <path d={across(disc.endMm)} className={styles.rim} />
      {[0, ...(roomForThirds ? thirds : []), limbLengthMm].map((distanceMm) => (
        <text key={distanceMm} x={30} y={yOf(distanceMm)} dy="0.34em" textAnchor="end" className={styles.label}>
          {Math.round(distanceMm)}
        </text>
      ))}
      <text x={30} y={bottom + 24} textAnchor="end" className={styles.label}>
        mm
      </text>
    </g>
  );
}

function Disc({ geometry: { disc } }: { geometry: MapGeometry }) {
  return (
    <g>
      <circle cx={disc.x} cy={disc.y} r={disc.radius} className={styles.skin} />
      <path
        d={`M${disc.x} ${disc.y - disc.radius}v${2 * disc.radius}M${disc.x - disc.radius} ${disc.y}h${2 * disc.radius}`}
        className={styles.line}
      />
      <text className={styles.label}>
        <tspan x={disc.x + disc.radius + 14} y={disc.y + 14}>
          distal end,
        </tspan>
        <tspan x={disc.x + disc.radius + 14} y={disc.y + 32}>
          anterior up
        </tspan>
      </text>
    </g>
  );
}

/** No number of a mark is put over the words beside the disc. */
const discWordsBox = ({ disc }: MapGeometry) => ({
  left: disc.x + disc.radius + 12,
  right: mapBox.left + mapBox.width,
  top: disc.y,
  bottom: disc.y + 36,
});

function MarkEllipse({ id, mark: { mark, on, centre, radiusX, radiusY, rotation } }: { id: string; mark: DrawnMark }) {
  return (
    <g clipPath={`url(#${id}-${on})`}>
      <ellipse
        cx={centre.x}
        cy={centre.y}
        rx={radiusX}
        ry={radiusY}
        transform={rotation === 0 ? undefined : `rotate(${rotation.toFixed(1)} ${centre.x.toFixed(1)} ${centre.y.toFixed(1)})`}
        fill={fillOf(id, mark.grade)}
        className={`${styles.mark} ${styles[`grade${mark.grade}`] ?? ""}`}
      />
    </g>
  );
}

const pointsText = (points: readonly Point[]): string => points.map(({ x, y }) => `${x.toFixed(1)},${y.toFixed(1)}`).join(" ");
