import { z } from "zod";
import { type Assessment, Bundle } from "@/lib/fit";
import { query } from "./query";
import { NotFound } from "./refusals";

/** What a signature froze, read back from its canonical JSON. */
const Evidence = z.object({
  format: z.literal("fitting-evidence/1"),
  meaning: z.string(),
  statement: z.string(),
  signedBy: z.object({ id: z.string(), name: z.string(), credentialsLine: z.string().optional() }),
  at: z.string(),
  timeZone: z.string(),
  previousDigest: z.string(),
  rulesVersion: z.string(),
  closeRead: z.array(z.string()),
  bundle: Bundle,
  assessment: z.custom<Assessment>((value) => typeof value === "object" && value !== null),
  bench: z.object({
    clinicNumber: z.string(),
    lengthMm: z.number().nullable(),
    material: z.string().nullable(),
    wallMm: z.number().nullable(),
    suspension: z.string().nullable(),
    trimLines: z.string().nullable(),
    benchNote: z.string().nullable(),
    deviceNote: z.string().nullable(),
  }),
});
export type Evidence = z.output<typeof Evidence>;

/** A signature with the evidence that it froze, and its withdrawal where there is one. */
export const seeRelease = query({
  permission: "see release sheets",
  read: async (db, signOffId: string) => {
    const signOff = await db.signOff.findUnique({
      where: { id: signOffId },
      include: {
        withdrawal: true,
        socket: { select: { number: true } },
        episode: { select: { wearerId: true, deliveredAt: true } },
      },
    });
    if (!signOff) throw new NotFound("signature");
    return { signOff, evidence: Evidence.parse(JSON.parse(signOff.evidence)) };
  },
  seen: ({ signOff }) => ({
    action: "saw a release sheet",
    kind: "sign-off",
    id: signOff.id,
    wearerId: signOff.episode.wearerId,
  }),
});
