/** What a page showed to whoever signs on it, as a digest: the signature is refused where anything of it changed since. */
import type { Assessment, Bundle } from "@/lib/fit";
import { sha256 } from "@/lib/trail/chain";
import { signedText } from "./clinic-signature";

/** Time alone does not count until it changes a check. */
export function digestOfShown({ asOf: _moment, ...bundle }: Bundle, { decision, gates, rulesVersion }: Assessment): string {
  return sha256(signedText({ bundle, decision, rulesVersion, gates: gates.map(({ id, state }) => [id, state]) }));
}
