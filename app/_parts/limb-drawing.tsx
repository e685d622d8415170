/** The limb under the marks: outline, measured levels, aspects, trim line, distal end. The same for a picture and for the hand. */
import { memo } from "react";
import { type Aspect, aspects } from "@/lib/fit/words";
import { HatchPatterns } from "./hatches";
import styles from "./limb-map.module.css";
import {
  alongLimb,
  apart,
  type LimbPlace,
  type LimbShape,
  type MapGeometry,
  mapBox,
  outlineOf,
  pointsText,
  trimPoints,
} from "./limb-map-geometry";

interface LimbDrawingProps {
  /** Begins the ids of hatches and clips, which are one for each map of a page. */
  id: string;
  geometry: MapGeometry;
  trimLine: readonly LimbPlace[];
  /** For the wearer: front, back, and no figures. */
  plain?: boolean;
}

const plainAspects: Record<Aspect, string> = {
  anterior: "front",
  posterior: "back",
  lateral: "outer side",
  medial: "inner side",
};

export const LimbDrawing = memo(function LimbDrawing({ id, geometry, trimLine, plain = false }: LimbDrawingProps) {
  const outline = pointsText(outlineOf(geometry));
  return (
    <>
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
      <Levels geometry={geometry} plain={plain} />
      <Aspects geometry={geometry} plain={plain} />
      <Disc geometry={geometry} plain={plain} />
      {trimLine.length > 1 && (
        <polyline points={pointsText(trimPoints(trimLine, geometry))} clipPath={`url(#${id}-wall)`} className={styles.trim} />
      )}
    </>
  );
});

/** What the map shows and from where; how far it can be trusted. */
export function viewWords({ side, levels = [] }: LimbShape, { toScaleAcross, reachMm }: MapGeometry): string {
  const lateralOn = side === "left" ? "right" : "left";
  const view = `${side === "left" ? "Left" : "Right"} limb seen from the front, unrolled from the posterior midline: lateral is on the ${lateralOn}.`;
  if (!toScaleAcross) return `${view} Not to scale across: circumferences are not known.`;
  const [first, last] = [levels[0]?.distanceFromEndMm ?? 0, levels.at(-1)?.distanceFromEndMm ?? reachMm];
  const partly = first > 1 || last < reachMm - 1;
  return `${view} To scale${partly ? `, measured from ${Math.max(0, Math.round(first))} to ${Math.round(last)} mm` : ""}.`;
}

/** Half of "posterior" and half of "anterior" at their largest, in units of the drawing. */
const roomForName = 70;

interface PartProps {
  geometry: MapGeometry;
  plain: boolean;
}

function Aspects({ geometry, plain }: PartProps) {
  const { reachMm, pointOf, top, centreX, circumferenceAt, unitsPerMm } = geometry;
  // On a slender limb the names at the seam move outwards, so that the four do not touch.
  const apart = Math.max(0, roomForName - (circumferenceAt(reachMm) * unitsPerMm) / 4);
  return (
    <g>
      {aspects.map((aspect, quarter) => {
        const angleDeg = quarter * 90;
        // The posterior midline is the seam: both edges carry its name, and the outline its line.
        const turns = aspect === "posterior" ? [0, 1] : [0];
        return turns.map((turn) => {
          const above = pointOf({ angleDeg, distanceFromEndMm: reachMm }, turn);
          return (
            <g key={`${aspect} ${turn}`}>
              {aspect !== "posterior" && <polyline points={pointsText(alongLimb(angleDeg, geometry))} className={styles.line} />}
              <text
                x={aspect === "posterior" ? above.x + Math.sign(above.x - centreX) * apart : above.x}
                y={top - 13}
                textAnchor="middle"
                className={styles.label}
              >
                {plain ? plainAspects[aspect] : aspect}
              </text>
            </g>
          );
        });
      })}
    </g>
  );
}

/** The levels of the measurement, or thirds where there is none, and the rim of the distal end; distances in mm beside them. */
function Levels({ geometry, plain }: PartProps) {
  const { limbLengthMm, reachMm, levelsMm, toScaleAcross, bottom, unitsPerMm, circumferenceAt, centreX, disc } = geometry;
  const yOf = (distanceMm: number) => bottom - distanceMm * unitsPerMm;
  const across = (distanceMm: number) => {
    const half = (circumferenceAt(distanceMm) * unitsPerMm) / 2;
    return `M${(centreX - half).toFixed(1)} ${yOf(distanceMm).toFixed(1)}h${(2 * half).toFixed(1)}`;
  };
  const lines = toScaleAcross ? levelsMm : [limbLengthMm / 3, (limbLengthMm * 2) / 3];
  const inside = [limbLengthMm, ...lines].filter((level) => level > 1 && level < reachMm - 1);
  return (
    <g>
      {apart(inside, 4 / unitsPerMm).map((distanceMm) => (
        <path key={distanceMm} d={across(distanceMm)} className={styles.line} />
      ))}
      <path d={across(disc.endMm)} className={styles.rim} />
      {apart(plain ? [] : [0, limbLengthMm, ...lines], 22 / unitsPerMm).map((distanceMm) => (
        <text key={distanceMm} x={30} y={yOf(distanceMm)} dy="0.34em" textAnchor="end" className={styles.label}>
          {Math.round(distanceMm)}
        </text>
      ))}
      {!plain && (
        <text x={30} y={bottom + 24} textAnchor="end" className={styles.label}>
          mm
        </text>
      )}
    </g>
  );
}

function Disc({ geometry: { disc }, plain }: PartProps) {
  return (
    <g>
      <circle cx={disc.x} cy={disc.y} r={disc.radius} className={styles.skin} />
      <path
        d={`M${disc.x} ${disc.y - disc.radius}v${2 * disc.radius}M${disc.x - disc.radius} ${disc.y}h${2 * disc.radius}`}
        className={styles.line}
      />
      <text className={styles.label}>
        <tspan x={disc.x + disc.radius + 14} y={disc.y + 14}>
          {plain ? "the end," : "distal end,"}
        </tspan>
        <tspan x={disc.x + disc.radius + 14} y={disc.y + 32}>
          {plain ? "front up" : "anterior up"}
        </tspan>
      </text>
    </g>
  );
}

/** No number of a mark is put over the words beside the disc. */
export const discWordsBox = ({ disc }: MapGeometry) => ({
  left: disc.x + disc.radius + 12,
  right: mapBox.left + mapBox.width,
  top: disc.y,
  bottom: disc.y + 36,
});
