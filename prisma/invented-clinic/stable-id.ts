/** Ids that are the same at every load, so that an address of the invented clinic stays true. */
import { createHash } from "node:crypto";

/** A UUID of version 8 (RFC 9562), made from words. */
export function stableId(words: string): string {
  const hex = createHash("sha256").update(`Tidewater Limb Clinic: ${words}`).digest("hex");
  return [hex.slice(0, 8), hex.slice(8, 12), `8${hex.slice(13, 16)}`, `8${hex.slice(17, 20)}`, hex.slice(20, 32)].join("-");
}

/** Ids for what has no name of its own, by the order in which it is made. */
export function countedIds(): () => string {
  let count = 0;
  return () => {
    count += 1;
    return stableId(`record ${count}`);
  };
}
