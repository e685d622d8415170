/** A text as a code that a telephone's camera reads. Made on the server: no browser loads the library for it. */
import { create } from "qrcode";
import type { ScannableCode } from "@/app/_parts/scannable-code";

/** ISO/IEC 18004 asks for four squares of white on every side. */
const border = 4;

export function codeOf(text: string): ScannableCode {
  const { size, data } = create(text, { errorCorrectionLevel: "M" }).modules;
  const path = Array.from(data, (dark, index) =>
    dark ? `M${border + (index % size)} ${border + Math.floor(index / size)}h1v1h-1z` : "",
  ).join("");
  return { side: size + 2 * border, path };
}
