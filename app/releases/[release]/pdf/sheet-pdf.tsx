import { codeOf } from "@/app/_forms/code-of";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { sealPdf } from "@/lib/exchange/sealed-pdf";
import type { ClinicSettings } from "@/lib/records/clinic";
import { now } from "@/lib/records/clock";
import type { SeenRelease } from "@/lib/records/see-release";
import { sheetAddress } from "../sheet-address";
import { sheetWords } from "../sheet-words";
import { type Paper, setOnPaper } from "./paper";
import { ReleasePaper } from "./release-paper";

/** Goes to the bench, whoever asks for it: without reasons, and sealed with the clinic's key. */
export async function releaseSheetPdf(seen: SeenRelease, clinic: ClinicSettings | null, paper: Paper): Promise<Buffer> {
  const { bundle } = seen.evidence;
  const { id: signOffId, digest } = seen.signOff;
  const pdf = await setOnPaper(sheetWords(seen, { clinic, withReasons: false }), (words) => (
    <ReleasePaper
      words={words}
      bundle={bundle}
      shape={limbShapeOf(bundle)}
      code={codeOf(sheetAddress(seen.signOff))}
      paper={paper}
    />
  ));
  return sealPdf(pdf, { signOffId, digest }, now());
}
