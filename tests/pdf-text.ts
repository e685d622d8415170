/** What a PDF says, read with pdf.js and not with what wrote it. */
import { extractText, getDocumentProxy } from "unpdf";

export interface ReadPdf {
  /** Of all pages, in reading order, with every run of white space as one space. */
  text: string;
  pages: number;
  title: string;
  language: string;
  /** Of the first page, in points. */
  size: { width: number; height: number };
  /** Names of the fonts, each with whether its program is in the file. */
  fonts: { name: string; embedded: boolean }[];
}

export async function readPdf(pdf: Buffer): Promise<ReadPdf> {
  const source = pdf.toString("latin1");
  const document = await getDocumentProxy(new Uint8Array(pdf));
  const { text, totalPages } = await extractText(document, { mergePages: true });
  const { info } = await document.getMetadata();
  const { width, height } = (await document.getPage(1)).getViewport({ scale: 1 });
  return {
    text: text.replaceAll(/\s+/g, " "),
    pages: totalPages,
    title: "Title" in info ? String(info.Title) : "",
    language: /\/Lang \(([^)]*)\)/.exec(source)?.[1] ?? "",
    size: { width: Math.round(width), height: Math.round(height) },
    fonts: [...source.matchAll(/\/BaseFont \/(\S+)/g)].map(([, name = ""]) => ({
      name,
      embedded: source.includes(`/FontName /${name}`) && /\/FontFile[23]? \d+ 0 R/.test(source),
    })),
  };
}
