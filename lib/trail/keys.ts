/**
 * The clinic's Ed25519 keys (RFC 8037) as a JSON Web Key Set (RFC 7517) in a file that only the server's user may read.
 * The newest key signs; of an older one only the public half is kept, so that what it signed can still be checked.
 */
import { randomUUID } from "node:crypto";
import {
  chmodSync,
  closeSync,
  existsSync,
  fsyncSync,
  linkSync,
  openSync,
  readFileSync,
  renameSync,
  rmSync,
  statSync,
  writeSync,
} from "node:fs";
import path from "node:path";
import { calculateJwkThumbprint, exportJWK, generateKeyPair } from "jose";
import { z } from "zod";

const PublicKey = z.object({
  kty: z.literal("OKP"),
  crv: z.literal("Ed25519"),
  x: z.string(),
  /** RFC 7638 thumbprint. */
  kid: z.string(),
  /** From when on this key signed, and until when: instants in UTC. */
  from: z.iso.datetime(),
  until: z.iso.datetime().optional(),
});
export type PublicKey = z.output<typeof PublicKey>;

const KeptKey = PublicKey.extend({ d: z.string().optional() });
type KeptKey = z.output<typeof KeptKey>;
export type SigningKey = KeptKey & { d: string };

const KeyFile = z.object({ keys: z.array(KeptKey).min(1) });
const PublicKeys = z.object({ keys: z.array(PublicKey).min(1) });

/** The key that signs now, made where there is none yet. */
export async function signingKey(file: string, now: Date): Promise<SigningKey> {
  if (!existsSync(file)) await makeFirst(file, now);
  const key = readKeys(file).find((kept): kept is SigningKey => kept.d !== undefined);
  if (!key) throw new Error(`${file} has no key to sign with`);
  return key;
}

/** The public halves, newest first; none where nothing was ever signed. */
export const publicKeys = (file: string): PublicKey[] => (existsSync(file) ? readKeys(file).map(publicHalf) : []);

/** Makes a new key to sign with from now on. The private half of the one before is gone for good. */
export async function rotateKeys(file: string, now: Date): Promise<PublicKey> {
  const before = existsSync(file) ? readKeys(file) : [];
  const made = await makeKey(now);
  const retired = before.map(publicHalf).map((key) => ({ ...key, until: key.until ?? now.toISOString() }));
  const unfinished = writeBeside(file, [made, ...retired]);
  renameSync(unfinished, file);
  syncFolder(file);
  return publicHalf(made);
}

/** Reads a set of public keys as `npm run keys -- public` writes it. @throws ZodError, SyntaxError */
export const parsePublicKeys = (text: string): PublicKey[] => PublicKeys.parse(JSON.parse(text)).keys;

async function makeFirst(file: string, now: Date): Promise<void> {
  const unfinished = writeBeside(file, [await makeKey(now)]);
  try {
    linkSync(unfinished, file);
  } catch (error) {
    // Another process made one meanwhile: that one is the clinic's.
    if (!existsSync(file)) throw error;
  } finally {
    rmSync(unfinished);
  }
  syncFolder(file);
}

async function makeKey(now: Date): Promise<SigningKey> {
  const { privateKey } = await generateKeyPair("EdDSA", { crv: "Ed25519", extractable: true });
  const { x, d } = await exportJWK(privateKey);
  if (!x || !d) throw new Error("an Ed25519 key has two halves");
  const halves = { kty: "OKP", crv: "Ed25519", x } as const;
  return { ...halves, d, kid: await calculateJwkThumbprint(halves), from: now.toISOString() };
}

function readKeys(file: string): KeptKey[] {
  if ((statSync(file).mode & 0o077) !== 0) chmodSync(file, 0o600);
  return KeyFile.parse(JSON.parse(readFileSync(file, "utf8"))).keys;
}

const publicHalf = ({ d: _private, ...key }: KeptKey): PublicKey => key;

function writeBeside(file: string, keys: readonly KeptKey[]): string {
  const unfinished = `${file}.${randomUUID()}`;
  const open = openSync(unfinished, "wx", 0o600);
  writeSync(open, `${JSON.stringify({ keys }, null, 1)}\n`);
  fsyncSync(open);
  closeSync(open);
  return unfinished;
}

/** A name is safe on the disk only once its folder is. */
function syncFolder(file: string): void {
  const folder = openSync(path.dirname(file), "r");
  fsyncSync(folder);
  closeSync(folder);
}
