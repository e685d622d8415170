import { codeOf } from "@/app/_forms/code-of";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import type { ClinicSettings } from "@/lib/records/clinic";
import type { SeenRelease } from "@/lib/records/see-release";
import { sheetAddress } from "../sheet-address";
import { sheetWords } from "../sheet-words";
import { type Paper, setOnPaper } from "./paper";
import { ReleasePaper } from "./release-paper";

/** Goes to the bench, whoever asks for it: without reasons. */
export function releaseSheetPdf(seen: SeenRelease, clinic: ClinicSettings | null, paper: Paper): Promise<Buffer> {
  const { bundle } = seen.evidence;
  return setOnPaper(
    <ReleasePaper
      words={sheetWords(seen, { clinic, withReasons: false })}
      bundle={bundle}
      shape={limbShapeOf(bundle)}
      code={codeOf(sheetAddress(seen.signOff))}
      paper={paper}
    />,
  );
}
