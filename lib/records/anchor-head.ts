/** Keeps the present end of the chain apart from it, in a file beside the store (lib/trail/anchors.ts). */
import { existsSync } from "node:fs";
import { keepAnchor, readAnchors } from "@/lib/trail/anchors";
import { now } from "./clock";
import { logFault } from "./faults";
import { headOf } from "./record-file";

/** Where it cannot be written that is logged, and nothing else fails: what was saved is saved. */
export function anchorHead(file: string, { unlessWithinMs = 0 }: { unlessWithinMs?: number } = {}): void {
  try {
    if (!existsSync(file)) return;
    const head = headOf(file);
    const last = readAnchors(file).anchors.at(-1);
    if (!head || (last?.position === head.position && last.digest === head.digest)) return;
    const at = now();
    if (last && unlessWithinMs > 0 && Math.abs(at.getTime() - Date.parse(last.at)) < unlessWithinMs) return;
    keepAnchor(file, { ...head, at: at.toISOString() });
  } catch (error) {
    logFault(error, "keeping the end of the chain apart from it");
  }
}
