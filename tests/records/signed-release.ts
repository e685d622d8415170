/** A clinic with one signed release, and what is needed to check it elsewhere. */
import { ReleaseFile, releaseFileText } from "@/lib/exchange/release-file";
import { clinicPublicKeys } from "@/lib/records/clinic-signature";
import { database } from "@/lib/records/database";
import { releaseMeaning } from "@/lib/records/meanings";
import { sign } from "@/lib/records/sign";
import { openTestClinic, readyEpisode, signingOf } from "./clinic";

export async function withSignedRelease() {
  const clinic = await openTestClinic();
  const episode = await readyEpisode(clinic);
  const { signOffId } = await sign(clinic.prosthetist, await signingOf(episode.episodeId, releaseMeaning));
  return { clinic, ...episode, signOffId };
}

/** As `/releases/ID/file` gives it out. */
export async function exportedText(signOffId: string): Promise<string> {
  const db = await database();
  const include = { countersignature: true, addenda: true, withdrawal: true };
  return releaseFileText(await db.signOff.findUniqueOrThrow({ where: { id: signOffId }, include }));
}

export const exported = async (signOffId: string): Promise<ReleaseFile> =>
  ReleaseFile.parse(JSON.parse(await exportedText(signOffId)));

export const publicKeysText = (): string => JSON.stringify({ keys: clinicPublicKeys() });
