/** The clinic's own signature, with the key that lies beside its store. */
import { databaseFileNamed, keysBeside } from "@/lib/trail/beside-database";
import { canonicalJson } from "@/lib/trail/chain";
import { signDetached } from "@/lib/trail/jws";
import { type PublicKey, publicKeys, signingKey } from "@/lib/trail/keys";

/** Plain values as the text that is signed: dates become text, fields that are not there are left out. */
export const signedText = (value: unknown): string => canonicalJson(JSON.parse(JSON.stringify(value)));

/** @returns a JWS whose content is detached */
export const signForClinic = async (text: string, now: Date): Promise<string> =>
  signDetached(text, await signingKey(keysBeside(databaseFileNamed()), now));

/** At a clinic's first run, so that its public key can be given out before anything is signed. */
export const makeClinicKey = async (now: Date): Promise<void> => void (await signingKey(keysBeside(databaseFileNamed()), now));

/** The newest first. */
export const clinicPublicKeys = (): PublicKey[] => publicKeys(keysBeside(databaseFileNamed()));
