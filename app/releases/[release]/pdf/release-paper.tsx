import { Rect, StyleSheet, Svg, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { viewWords } from "@/app/_parts/limb-drawing";
import { mapGeometry } from "@/app/_parts/limb-map-geometry";
import type { DrawnLimb } from "@/app/_parts/limb-shape";
import type { ScannableCode } from "@/app/_parts/scannable-code";
import { carriedMarks, carriedPlaces, noPlaceCarried } from "../carried-marks";
import type { SheetWords } from "../sheet-words";
import { LimbMapOnPaper } from "./limb-map";
import { ink, line, type Paper, SheetOfPaper, soft, stop } from "./paper";
import { CodeOnPaper, DimensionsOnPaper, ProfileOnPaper } from "./release-parts";

const styles = StyleSheet.create({
  stop: { borderWidth: 2, borderColor: stop, color: stop, padding: "4pt 8pt", marginBottom: 6 },
  bold: { fontWeight: 600 },
  soft: { color: soft, fontSize: 8.5 },
  head: { flexDirection: "row", justifyContent: "space-between", alignItems: "flex-end", marginBottom: 8 },
  title: { fontSize: 16, fontWeight: 600, lineHeight: 1.15, marginBottom: 3 },
  h2: { fontSize: 10.5, fontWeight: 600, borderBottomWidth: 1, borderBottomColor: ink, paddingBottom: 1, marginBottom: 3 },
  section: { marginBottom: 8 },
  two: { flexDirection: "row", gap: 18 },
  half: { flexGrow: 1, flexBasis: 0 },
  row: { flexDirection: "row", borderBottomWidth: 0.6, borderBottomColor: line, paddingVertical: 1.4 },
  item: { flexDirection: "row", gap: 5, marginBottom: 1.5 },
  warn: { borderWidth: 1.4, borderColor: ink, padding: "5pt 9pt", marginBottom: 8 },
  /** On every page, so that two sheets are not mixed. */
  foot: {
    position: "absolute",
    bottom: "7mm",
    left: "14mm",
    right: "14mm",
    fontSize: 8,
    color: soft,
    flexDirection: "row",
    gap: 4,
    justifyContent: "flex-end",
  },
  mark: {
    position: "absolute",
    top: "42%",
    left: 0,
    right: 0,
    textAlign: "center",
    fontSize: 92,
    color: stop,
    opacity: 0.16,
    transform: "rotate(-28deg)",
  },
});

interface ReleasePaperProps {
  words: SheetWords;
  bundle: Parameters<typeof carriedMarks>[0];
  shape: DrawnLimb;
  code: ScannableCode;
  paper: Paper;
}

/** The release sheet as the bench gets it. The words and their order are the page's. */
export function ReleasePaper({ words, bundle, shape, code, paper }: ReleasePaperProps) {
  const marks = carriedMarks(bundle);
  return (
    <SheetOfPaper
      title={`${words.title}: ${words.socket}`}
      paper={paper}
      fontSize={9.5}
      onEveryPage={<OnEveryPage words={words} />}
    >
      {words.stops.map(({ lead, words: said }) => (
        <Text key={lead} style={styles.stop}>
          <Text style={styles.bold}>{lead}</Text> {said}
        </Text>
      ))}
      <View style={styles.head}>
        <View>
          <Text>{words.clinic}</Text>
          <Text style={styles.title}>{words.title}</Text>
          <Text style={styles.bold}>{words.socket}</Text>
        </View>
        <Text style={styles.soft}>{words.signedAt}</Text>
      </View>
      {words.isRelease && (
        <>
          <View style={styles.two}>
            <Section title="Inside dimensions" half>
              <DimensionsOnPaper words={words} />
            </Section>
            <Section title="Profile" half>
              <ProfileOnPaper dimensions={words.dimensions} />
            </Section>
          </View>
          <View style={styles.two}>
            <View style={styles.half}>
              <Section title="Carried into the definitive socket">
                {words.carried.length === 0 ? (
                  <Text>{words.nothingCarried}</Text>
                ) : (
                  words.carried.map(({ id, words: said }, index) => (
                    <Item key={id} sign={`${index + 1}.`}>
                      <Text style={styles.bold}>{said}</Text>
                    </Item>
                  ))
                )}
              </Section>
              <Section title="Make it from">
                {words.makeFrom.map(({ what, how }) => (
                  <View key={what} style={styles.row} wrap={false}>
                    <Text style={{ width: 92, color: soft }}>{what}</Text>
                    <Text style={styles.half}>{how}</Text>
                  </View>
                ))}
              </Section>
            </View>
            <Section title="On the limb map" half>
              {marks.length === 0 ? (
                <Text>{noPlaceCarried}</Text>
              ) : (
                <>
                  <LimbMapOnPaper
                    shape={shape}
                    marks={marks}
                    widthPt={218}
                    wordsPt={7.5}
                    names={{ anterior: "anterior", lateral: "lateral", posterior: "posterior", medial: "medial" }}
                    endWords={["distal end,", "anterior up"]}
                    withDistances
                  />
                  <Text style={styles.soft}>
                    {viewWords(shape, mapGeometry(shape))} {carriedPlaces}
                  </Text>
                </>
              )}
            </Section>
          </View>
          <View style={styles.warn} wrap={false}>
            <Text style={styles.bold}>Cautions for the bench</Text>
            {words.cautions.map((caution) => (
              <Item key={caution}>
                <Text>{caution}</Text>
              </Item>
            ))}
          </View>
          <Section title="When it comes back">
            {words.onReturn.map((check) => (
              <Item key={check} sign="☐">
                <Text>{check}</Text>
              </Item>
            ))}
          </Section>
        </>
      )}
      {words.accepted.length > 0 && (
        <Section title="Accepted with a reason">
          {words.accepted.map(({ id, words: said }) => (
            <Item key={id}>
              <Text>{said}</Text>
            </Item>
          ))}
        </Section>
      )}
      {words.addenda.length > 0 && (
        <View style={styles.warn} wrap={false}>
          <Text style={styles.bold}>Put right since</Text>
          {words.addenda.map(({ id, words: said, by }) => (
            <Item key={id}>
              <Text>
                {said} <Text style={styles.soft}>{by}</Text>
              </Text>
            </Item>
          ))}
        </View>
      )}
      <View style={[styles.two, { alignItems: "flex-start" }]} wrap={false}>
        <Section title="Signed" half>
          {words.signature.map((said, index) => (
            <Text key={said} style={index === 0 ? styles.bold : {}}>
              {said}
            </Text>
          ))}
          <Text style={{ fontSize: 8.5, marginTop: 3 }}>{words.digest}</Text>
          {words.small.map((said) => (
            <Text key={said} style={styles.soft}>
              {said}
            </Text>
          ))}
        </Section>
        <View style={{ width: 92 }}>
          <CodeOnPaper code={code} widthPt={88} />
          <Text style={[styles.soft, { marginTop: 2 }]}>Scan to see whether this sheet stands.</Text>
        </View>
      </View>
    </SheetOfPaper>
  );
}

function OnEveryPage({ words }: { words: SheetWords }) {
  const [firstStop] = words.stops;
  return (
    <>
      <View fixed style={styles.foot}>
        <Text>{`${words.socket} · ${words.digest.slice(-71, -54)} ·`}</Text>
        <Text render={({ pageNumber, totalPages }) => `page ${pageNumber} of ${totalPages}`} style={{ minWidth: 48 }} />
      </View>
      {firstStop && (
        <Text fixed style={styles.mark}>
          {firstStop.lead.replace(".", "")}
        </Text>
      )}
    </>
  );
}

function Section({ title, half = false, children }: { title: string; half?: boolean; children: ReactNode }) {
  return (
    <View style={half ? [styles.section, styles.half] : styles.section}>
      <Text style={styles.h2}>{title}</Text>
      {children}
    </View>
  );
}

function Item({ sign = "•", children }: { sign?: string; children: ReactNode }) {
  return (
    <View style={styles.item} wrap={false}>
      {sign === "☐" ? (
        <Svg viewBox="0 0 10 10" style={{ width: 8, height: 8, marginTop: 2 }}>
          <Rect x={0.7} y={0.7} width={8.6} height={8.6} stroke={ink} strokeWidth={1} fill="none" />
        </Svg>
      ) : (
        <Text>{sign}</Text>
      )}
      <View style={styles.half}>{children}</View>
    </View>
  );
}
