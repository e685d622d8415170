/** The parts of a release sheet that are drawn: the table of dimensions, the profile, the code. */
import { Path, Polyline, Rect, StyleSheet, Svg, Text, View } from "@react-pdf/renderer";
import type { ScannableCode } from "@/app/_parts/scannable-code";
import { noProfile, profileBox, profileGeometry, profileWords } from "../profile-geometry";
import type { SheetWords } from "../sheet-words";
import { fontFamily, ink, line, soft } from "./paper";

const styles = StyleSheet.create({
  row: { flexDirection: "row", borderBottomWidth: 0.6, borderBottomColor: line, paddingVertical: 1.4 },
  cell: { flexGrow: 1, flexBasis: 0, textAlign: "right" },
  soft: { color: soft, fontSize: 8.5 },
});

export function DimensionsOnPaper({ words }: { words: SheetWords }) {
  if (words.dimensionRows.length === 0) return <Text>No inside dimensions are on record.</Text>;
  return (
    <>
      <View style={styles.row}>
        {words.dimensionHeads.map((head, column) => (
          <Text key={head} style={[styles.cell, { color: soft, textAlign: column === 0 ? "left" : "right" }]}>
            {head}
          </Text>
        ))}
      </View>
      {words.dimensionRows.map((cells) => (
        <View key={cells[0]} style={styles.row} wrap={false}>
          {cells.map((cell, column) => (
            <Text
              // biome-ignore lint/suspicious/noArrayIndexKey: the four columns of a table keep their places.
              key={column}
              style={[
                styles.cell,
                { textAlign: column === 0 ? "left" : "right", fontWeight: column === 3 ? 600 : 400 },
                column === 3 ? { fontSize: 11 } : {},
              ]}
            >
              {cell}
            </Text>
          ))}
        </View>
      ))}
      <Text style={styles.soft}>{words.dimensionsNote}</Text>
    </>
  );
}

export function ProfileOnPaper({ dimensions }: { dimensions: SheetWords["dimensions"] }) {
  const geometry = profileGeometry(dimensions);
  if (!geometry) return <Text>{noProfile}</Text>;
  const { width, height, top, bottom, words } = profileBox;
  const widthPt = 246;
  return (
    <Svg viewBox={`0 0 ${width} ${height}`} style={{ width: widthPt, height: (widthPt * height) / width }}>
      {geometry.levels.map(({ x, distanceMm }) => (
        <Path key={distanceMm} d={`M${x} ${top}V${bottom}`} stroke={line} strokeWidth={0.8} />
      ))}
      {geometry.levels.map(({ x, distanceMm }) => (
        <Text key={distanceMm} x={x} y={words} textAnchor="middle" style={{ fontFamily, fontSize: 11, fill: soft }}>
          {`${distanceMm}`}
        </Text>
      ))}
      {geometry.limb.map((points) => (
        <Polyline key={points} points={points} stroke={soft} strokeWidth={1} strokeDasharray="5 4" fill="none" />
      ))}
      {geometry.definitive.map((points) => (
        <Polyline key={points} points={points} stroke={ink} strokeWidth={2} fill="none" />
      ))}
      <Text x={width - 4} y={12} textAnchor="end" style={{ fontFamily, fontSize: 11, fill: soft }}>
        {profileWords}
      </Text>
    </Svg>
  );
}

export const CodeOnPaper = ({ code, widthPt }: { code: ScannableCode; widthPt: number }) => (
  <Svg viewBox={`0 0 ${code.side} ${code.side}`} style={{ width: widthPt, height: widthPt }}>
    <Rect width={code.side} height={code.side} fill="#ffffff" />
    <Path d={code.path} fill="#000000" />
  </Svg>
);
