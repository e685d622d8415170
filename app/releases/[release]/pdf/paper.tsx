/** The paper that sheets are set on: sizes, type, and the head that says what it is to a reader of files. */
import path from "node:path";
import { Document, Font, Page, renderToBuffer, StyleSheet, Text, View } from "@react-pdf/renderer";
import type { ReactNode } from "react";
import { allInLetters } from "./in-letters";

export const papers = { a4: "A4", letter: "LETTER" } as const;
export type Paper = keyof typeof papers;

/** Letters of most names of Europe: each script is a file of its own, and is embedded only where it is used. */
const scripts = ["latin", "latin-ext", "greek", "cyrillic", "vietnamese"] as const;
const weights = [400, 600];
const family = (script: string) => `Sheet ${script}`;
const typeface = scripts.map(family);

const files = path.join(process.cwd(), "node_modules/@fontsource/source-sans-3/files");
for (const script of scripts)
  Font.register({
    family: family(script),
    fonts: weights.map((fontWeight) => ({
      src: path.join(files, `source-sans-3-${script}-${fontWeight}-normal.woff`),
      fontWeight,
    })),
  });
interface FontkitFont {
  characterSet: readonly number[];
  glyphForCodePoint(codePoint: number): unknown;
}

/**
 * Gets every letter once, before anything is set. fontkit keeps a glyph as it first met it: one that was met as a part of
 * another (the point of a question mark) would have no letter, so that text could not be copied or searched, and lines
 * would break within words.
 */
async function loadType(): Promise<ReadonlySet<number>> {
  const letters = new Set<number>();
  for (const script of scripts)
    for (const fontWeight of weights) {
      const face = { fontFamily: family(script), fontWeight };
      await Font.load(face);
      const { data } = Font.getFont(face) as unknown as { data: FontkitFont }; // its types leave out what a loaded font is
      for (const codePoint of data.characterSet) {
        data.glyphForCodePoint(codePoint);
        letters.add(codePoint);
      }
    }
  return letters;
}

let loaded: Promise<ReadonlySet<number>> | undefined;

/**
 * The file of a sheet.
 *
 * @param said what stands on it; `sheetOf` gets it in letters that the typeface has
 */
export async function setOnPaper<Said>(
  said: Said,
  sheetOf: (said: Said) => Parameters<typeof renderToBuffer>[0],
): Promise<Buffer> {
  loaded ??= loadType();
  const letters = await loaded;
  return renderToBuffer(sheetOf(allInLetters(said, (codePoint) => letters.has(codePoint))));
}

// Words of the trade are not broken.
Font.registerHyphenationCallback((word) => [word]);

export const ink = "#1b1f23";
export const soft = "#4c545b";
export const line = "#b9b1a2";
export const stop = "#8f1d2c";

/** Text of a drawing does not take it from the page. */
export const fontFamily = [...typeface] as unknown as string; // its types know one family, the layout takes several

const styles = StyleSheet.create({
  page: { fontFamily, color: ink },
  // Not on the page: with a line height there, the library leaves out the numbers of pages.
  text: { lineHeight: 1.3 },
});

interface SheetOfPaperProps {
  title: string;
  paper: Paper;
  fontSize: number;
  /** Stands on every page. */
  onEveryPage?: ReactNode;
  children: ReactNode;
}

export const SheetOfPaper = ({ title, paper, fontSize, onEveryPage, children }: SheetOfPaperProps) => (
  <Document title={title} language="en" creator="Fitting Ledger" producer="Fitting Ledger" pdfVersion="1.7">
    <Page size={papers[paper]} style={[styles.page, { fontSize, padding: "13mm 14mm 14mm" }]}>
      <View style={[styles.text, { fontSize }]}>{children}</View>
      {onEveryPage}
    </Page>
  </Document>
);

/** Loads what sets a sheet, so that whoever reads the page and then asks for the file does not wait for it. */
export const makePaperReady = async (): Promise<void> =>
  void (await setOnPaper("1", (said) => (
    <SheetOfPaper title="" paper="a4" fontSize={9}>
      <Text>{said}</Text>
    </SheetOfPaper>
  )));
