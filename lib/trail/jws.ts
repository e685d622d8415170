/**
 * Signatures as JWS (RFC 7515) with Ed25519 (RFC 8037), their content detached (RFC 7515, appendix F): what is signed
 * stays readable beside its signature.
 */
import { base64url, CompactSign, compactVerify, errors, importJWK } from "jose";
import type { PublicKey, SigningKey } from "./keys";

const algorithm = "EdDSA";

/** @returns `HEADER..SIGNATURE` */
export async function signDetached(text: string, key: SigningKey): Promise<string> {
  const whole = await new CompactSign(new TextEncoder().encode(text))
    .setProtectedHeader({ alg: algorithm, kid: key.kid })
    .sign(await importJWK(key, algorithm));
  const [header, , signature] = whole.split(".");
  return `${header}..${signature}`;
}

export type SignatureCheck =
  | { state: "holds"; key: PublicKey }
  | { state: "does not hold" }
  /** None of these keys is the one that it names. */
  | { state: "unknown key"; kid: string | undefined };

export async function checkDetached(text: string, signature: string, keys: readonly PublicKey[]): Promise<SignatureCheck> {
  const kid = keyNamedBy(signature);
  if (kid === null) return { state: "does not hold" };
  const key = keys.find((known) => known.kid === kid);
  if (!key) return { state: "unknown key", kid };
  const whole = signature.replace("..", `.${base64url.encode(text)}.`);
  try {
    await compactVerify(whole, await importJWK(key, algorithm), { algorithms: [algorithm] });
    return { state: "holds", key };
  } catch (error) {
    if (error instanceof errors.JOSEError) return { state: "does not hold" };
    throw error;
  }
}

/** What the header says, before anything is trusted; null where it is no signature of this form. */
function keyNamedBy(signature: string): string | undefined | null {
  const parts = signature.split(".");
  if (parts.length !== 3 || parts[1] !== "") return null;
  try {
    const header: unknown = JSON.parse(new TextDecoder().decode(base64url.decode(parts[0] ?? "")));
    if (typeof header !== "object" || header === null) return null;
    return "kid" in header && typeof header.kid === "string" ? header.kid : undefined;
  } catch {
    return null;
  }
}
