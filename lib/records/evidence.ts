/** What a signature freezes: one canonical JSON text (RFC 8785) that says all that the signer took responsibility for. */
import { z } from "zod";
import { type Assessment, Bundle } from "@/lib/fit";

/** Format 1 came before the clinic signed with a key of its own; it says less of itself. */
export const Evidence = z.object({
  format: z.enum(["fitting-evidence/1", "fitting-evidence/2"]),
  /** The signature's own id, and its place among all signatures of the clinic: 1, 2, 3 … */
  id: z.string().optional(),
  position: z.number().optional(),
  meaning: z.string(),
  statement: z.string(),
  signedBy: z.object({ id: z.string(), name: z.string(), credentialsLine: z.string().optional() }),
  /** What was asked for at the moment of signing. */
  provedBy: z.array(z.enum(["password", "code"])).optional(),
  /** Whether the clinic's rules asked for a second prosthetist's signature. */
  countersignAsked: z.boolean().optional(),
  at: z.string(),
  timeZone: z.string(),
  previousDigest: z.string(),
  /** The last entry of the trail when this was signed: whoever cuts the trail's end off contradicts this sheet. */
  trail: z.object({ position: z.number(), digest: z.string() }).optional(),
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
    /** Of the definitive socket; asked for when a release is signed. */
    definitiveMaterial: z.string().nullable().optional(),
  }),
});
export type Evidence = z.output<typeof Evidence>;
