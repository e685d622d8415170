/** What better-auth does with the codes of whoever is signed in, or is about to. */
import { APIError } from "better-auth/api";
import { headers } from "next/headers";
import { auth } from "./auth";

/** Makes the secret of a device that is to give codes. It counts once a first code has confirmed it. */
export const prepareSecondFactor = (password: string): Promise<boolean> =>
  isTaken(async () => (await auth()).api.enableTwoFactor({ body: { password }, headers: await headers() }));

export const confirmWithCode = (code: string): Promise<boolean> =>
  isTaken(async () => (await auth()).api.verifyTOTP({ body: { code }, headers: await headers() }));

/** The second step of signing in. One of the codes that were kept for a lost device is taken as well, once. */
export const signInWithCode = (code: string): Promise<boolean> => {
  const given = code.replaceAll(/\s/g, "");
  return isTaken(async () => {
    const { api } = await auth();
    const asked = await headers();
    return /^\d{6}$/.test(given)
      ? api.verifyTOTP({ body: { code: given }, headers: asked })
      : api.verifyBackupCode({ body: { code: given }, headers: asked });
  });
};

async function isTaken(act: () => Promise<unknown>): Promise<boolean> {
  try {
    await act();
    return true;
  } catch (error) {
    if (error instanceof APIError) return false;
    throw error;
  }
}
