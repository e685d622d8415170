import { Circle, Ellipse, G, Path, Polygon, Polyline, Svg, Text } from "@react-pdf/renderer";
import { discWordsBox } from "@/app/_parts/limb-drawing";
import { alongLimb, apart, mapBox, mapGeometry, outlineOf, pointsText } from "@/app/_parts/limb-map-geometry";
import { drawMarks, type MapMark } from "@/app/_parts/limb-map-marks";
import type { DrawnLimb } from "@/app/_parts/limb-shape";
import { type Aspect, aspects } from "@/lib/fit/words";
import { fontFamily, ink, line, soft } from "./paper";

interface LimbMapOnPaperProps {
  shape: DrawnLimb;
  marks: readonly MapMark[];
  widthPt: number;
  /** Height of the words on the map. */
  wordsPt: number;
  /** What stands above the four sides, and beside the end. */
  names: Readonly<Record<Aspect, string>>;
  endWords: readonly [string, string];
  /** Distances from the distal end beside the levels, in mm. */
  withDistances: boolean;
}

/** The limb map as on the screen, drawn with the lines of a PDF. */
export function LimbMapOnPaper({ shape, marks, widthPt, wordsPt, names, endWords, withDistances }: LimbMapOnPaperProps) {
  const geometry = mapGeometry(shape);
  const { height, disc, centreX, top, bottom, reachMm, levelsMm, circumferenceAt, unitsPerMm, pointOf } = geometry;
  const drawn = drawMarks(marks, geometry, [discWordsBox(geometry)]);
  const across = (distanceMm: number) => {
    const half = (circumferenceAt(distanceMm) * unitsPerMm) / 2;
    return `M${centreX - half} ${bottom - distanceMm * unitsPerMm}h${2 * half}`;
  };
  const wordsHigh = (wordsPt * mapBox.width) / widthPt;
  const small = { fontFamily, fontSize: wordsHigh, fill: soft };
  return (
    <Svg
      viewBox={`${mapBox.left} 0 ${mapBox.width} ${height}`}
      style={{ width: widthPt, height: (widthPt * height) / mapBox.width }}
    >
      <Polygon points={pointsText(outlineOf(geometry))} stroke={ink} strokeWidth={1.2} fill="none" />
      {levelsMm.map((level) => (
        <Path key={level} d={across(level)} stroke={line} strokeWidth={0.8} />
      ))}
      {aspects.map((aspect, quarter) => {
        const turns = aspect === "posterior" ? [0, 1] : [0];
        return turns.map((turn) => {
          const above = pointOf({ angleDeg: quarter * 90, distanceFromEndMm: reachMm }, turn);
          return (
            <G key={`${aspect} ${turn}`}>
              {aspect !== "posterior" && (
                <Polyline
                  points={pointsText(alongLimb(quarter * 90, geometry))}
                  stroke={line}
                  strokeWidth={0.8}
                  strokeDasharray="3 3"
                  fill="none"
                />
              )}
              <Text x={above.x} y={top - 8} textAnchor="middle" style={small}>
                {names[aspect]}
              </Text>
            </G>
          );
        });
      })}
      <Circle cx={disc.x} cy={disc.y} r={disc.radius} stroke={ink} strokeWidth={1.2} fill="none" />
      <Path
        d={`M${disc.x} ${disc.y - disc.radius}v${2 * disc.radius}M${disc.x - disc.radius} ${disc.y}h${2 * disc.radius}`}
        stroke={line}
        strokeWidth={0.8}
      />
      {endWords.map((words, row) => (
        <Text key={words} x={disc.x + disc.radius + 12} y={disc.y + 14 + row * wordsHigh * 1.25} style={small}>
          {words}
        </Text>
      ))}
      {withDistances &&
        apart([0, ...levelsMm], 15 / unitsPerMm).map((level) => (
          <Text key={level} x={28} y={bottom - level * unitsPerMm + 4} textAnchor="end" style={small}>
            {`${Math.round(level)}`}
          </Text>
        ))}
      {drawn.map(({ key, centre, radiusX, radiusY }) => (
        <Ellipse key={key} cx={centre.x} cy={centre.y} rx={radiusX} ry={radiusY} stroke={ink} strokeWidth={1.4} fill="#e9e4d8" />
      ))}
      {drawn.map(({ key, number, centre }) => (
        <Text key={key} x={centre.x} y={centre.y + 5} textAnchor="middle" style={{ fontFamily, fontSize: 15, fill: ink }}>
          {`${number}`}
        </Text>
      ))}
    </Svg>
  );
}
