/** A clinic with a wear trial that has begun, in a file of its own, and an assistant who is signed in. */
import { auth } from "@/lib/access/auth";
import { addWearer } from "@/lib/records/add-wearer";
import { closeDatabase, database } from "@/lib/records/database";
import { moveSocket } from "@/lib/records/move-socket";
import { openEpisode } from "@/lib/records/open-episode";
import { planWearTrial } from "@/lib/records/plan-wear-trial";
import { recordWearTrial } from "@/lib/records/record-wear-trial";
import { specifySocket } from "@/lib/records/specify-socket";
import { episodeOf, minutesAfter, openTestClinic, password, stations } from "../records/clinic";
import { secret } from "../screens/prepared";

export async function trialToRecord(address: string) {
  process.env.BETTER_AUTH_SECRET = secret;
  process.env.BETTER_AUTH_URL = address;
  const clinic = await openTestClinic({ slowHashing: true });
  // The server that is to be killed goes by the real clock.
  const now = new Date().toISOString();
  clinic.setNow(now);
  const { prosthetist, technician, assistant } = clinic;
  const { wearerId } = await addWearer(assistant, { clinicNumber: "T-1", name: "Wearer One", birthOn: "1984-06-30" });
  const { episodeId } = await openEpisode(prosthetist, episodeOf(clinic, wearerId));
  const { socketId } = await specifySocket(prosthetist, {
    ...{ episodeId, at: minutesAfter(now, -60) },
    stations: stations([170.3, 182.2, 197.0, 212.8, 231.6]),
  });
  const db = await database();
  for (const state of ["being made", "sent", "at hand"] as const) {
    const { version } = await db.checkSocket.findUniqueOrThrow({ where: { id: socketId } });
    await moveSocket(state === "at hand" ? assistant : technician, { socketId, version, state, at: now });
  }
  const plan = { minutes: 60, intervalMin: 5, loadKg: 0.68, loadDistanceMm: 220, activities: "writing" };
  const { trialId } = await planWearTrial(assistant, { ...plan, socketId });
  await recordWearTrial(assistant, { trialId, events: [{ kind: "begun", at: now }] });
  // Whoever signs in is looked up in small letters.
  const { email } = await db.user.update({ where: { id: assistant.id }, data: { email: "assistant@example.test" } });
  const cookie = await signedIn(address, email);
  await closeDatabase();
  return { clinic, file: clinic.file, episodeId, trialId, cookie };
}

async function signedIn(address: string, email: string): Promise<string> {
  const response = await (await auth()).handler(
    new Request(`${address}/api/auth/sign-in/email`, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify({ email, password }),
    }),
  );
  if (!response.ok) throw new Error(`the assistant could not sign in: ${response.status} ${await response.text()}`);
  return response.headers
    .getSetCookie()
    .map((line) => line.split(";")[0])
    .join("; ");
}
