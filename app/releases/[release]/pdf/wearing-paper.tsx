import { Rect, StyleSheet, Svg, Text, View } from "@react-pdf/renderer";
import { dayAndTimeAt } from "@/app/_parts/dates";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import type { SeenWearing } from "@/lib/records/see-after-release";
import { type WearingDay, wearingDays } from "../wearing/wearing-days";
import { wearingWords } from "../wearing/wearing-words";
import { LimbMapOnPaper } from "./limb-map";
import { ink, line, type Paper, SheetOfPaper, soft, stop } from "./paper";

const styles = StyleSheet.create({
  stop: { borderWidth: 2, borderColor: stop, padding: "5pt 10pt", marginTop: 6 },
  bold: { fontWeight: 600 },
  title: { fontSize: 20, fontWeight: 600, lineHeight: 1.15, marginBottom: 2 },
  h2: { fontSize: 14, fontWeight: 600, marginBottom: 2 },
  row: { flexDirection: "row", alignItems: "center", borderBottomWidth: 0.6, borderBottomColor: line },
  two: { flexDirection: "row", gap: 16, marginTop: 8 },
  boxes: { flexDirection: "row", gap: 4, alignItems: "center" },
  step: { flexDirection: "row", gap: 5, marginBottom: 1 },
});

const columns = ["31%", "20%", "22%", "27%"] as const;

interface WearingPaperProps extends Pick<SeenWearing, "signOff" | "clinic" | "bundle"> {
  plan: NonNullable<SeenWearing["plan"]>;
  paper: Paper;
}

/** The wearer's page for the kitchen table, large and plain. */
export function WearingPaper({ signOff, clinic, bundle, plan, paper }: WearingPaperProps) {
  const { wearer, side } = signOff.episode;
  const days = wearingDays(plan);
  // Sixteen rows and all the rest go on one page only where they are set a little closer.
  const rowPt = days.length > 12 || paper === "letter" ? 1.2 : 2.6;
  return (
    <SheetOfPaper title={`${wearingWords.title}: ${wearer.name}`} paper={paper} fontSize={12.5}>
      {signOff.withdrawal && (
        <Text style={[styles.stop, { color: stop, marginTop: 0, marginBottom: 6 }]}>
          <Text style={styles.bold}>{wearingWords.withdrawn.lead}</Text> {wearingWords.withdrawn.words}
        </Text>
      )}
      <Text style={styles.title}>{wearingWords.title}</Text>
      <Text style={{ marginBottom: 5 }}>
        {wearer.name} · {side} side · {clinic.name}
        {clinic.invented ? " · invented data" : ""}
      </Text>
      <View style={styles.row}>
        {wearingWords.heads.map((head, column) => (
          <Text key={head} style={{ width: columns[column] ?? "25%", fontSize: 10.5, color: soft }}>
            {head}
          </Text>
        ))}
      </View>
      {days.map((day) => (
        <Day key={day.when} day={day} rowPt={rowPt} />
      ))}
      <View style={styles.two}>
        <View style={{ flexGrow: 1, flexBasis: 0 }}>
          <Text style={styles.h2}>{wearingWords.everyTime}</Text>
          {wearingWords.steps.map(({ lead, words }, index) => (
            <View key={words} style={styles.step}>
              <Text>{index + 1}.</Text>
              <Text style={{ flexGrow: 1, flexBasis: 0 }}>
                {lead && <Text style={styles.bold}>{lead} </Text>}
                {words}
              </Text>
            </View>
          ))}
          {plan.words && <Text style={[styles.bold, { marginTop: 3 }]}>{plan.words}</Text>}
        </View>
        <View style={{ width: 200 }}>
          <Text style={styles.h2}>{wearingWords.draw}</Text>
          <LimbMapOnPaper
            shape={limbShapeOf(bundle)}
            marks={[]}
            widthPt={200}
            wordsPt={9}
            names={{ anterior: "front", posterior: "back", lateral: "outside", medial: "inside" }}
            endWords={["the end,", "front up"]}
            withDistances={false}
          />
        </View>
      </View>
      <View style={styles.stop} wrap={false}>
        <Text style={styles.h2}>{wearingWords.stop}</Text>
        {wearingWords.stops.map((words) => (
          <View key={words} style={styles.step}>
            <Text>•</Text>
            <Text>{words}</Text>
          </View>
        ))}
        <Text style={[styles.bold, { fontSize: 15, marginTop: 2 }]}>Call: {plan.call}</Text>
      </View>
      <Text style={{ fontSize: 9, color: soft, marginTop: 5 }}>
        Planned by {plan.byName}, {dayAndTimeAt(plan.at, clinic.timeZone)}. {wearingWords.follow}
      </Text>
    </SheetOfPaper>
  );
}

function Day({ day: { when, howLong, times, goesOn }, rowPt }: { day: WearingDay; rowPt: number }) {
  return (
    <View style={[styles.row, { paddingVertical: rowPt }]} wrap={false}>
      <Text style={{ width: columns[0], fontWeight: 600 }}>{when}</Text>
      <Text style={{ width: columns[1] }}>{howLong}</Text>
      <View style={[styles.boxes, { width: columns[2] }]}>
        {goesOn ? <Text>{wearingWords.goesOn.ticks}</Text> : <Boxes count={times} />}
      </View>
      <View style={[styles.boxes, { width: columns[3] }]}>
        {goesOn ? (
          <Text>{wearingWords.goesOn.marks}</Text>
        ) : (
          <>
            <Boxes count={1} />
            <Text>yes </Text>
            <Boxes count={1} />
            <Text>no</Text>
          </>
        )}
      </View>
    </View>
  );
}

const Boxes = ({ count }: { count: number }) =>
  Array.from({ length: count }, (_, index) => (
    // biome-ignore lint/suspicious/noArrayIndexKey: boxes are alike and never change their order.
    <Svg key={index} viewBox="0 0 12 12" style={{ width: 12, height: 12 }}>
      <Rect x={0.7} y={0.7} width={10.6} height={10.6} rx={1.5} stroke={ink} strokeWidth={1} fill="none" />
    </Svg>
  ));
