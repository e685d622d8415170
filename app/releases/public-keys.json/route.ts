import { answerWithFile, jsonType } from "@/app/_forms/answer-with-file";
import { clinicPublicKeys } from "@/lib/records/clinic-signature";

/** The clinic's public keys as a JSON Web Key Set (RFC 7517), for whoever is to check its releases. */
export const GET = (): Promise<Response> =>
  answerWithFile(async () => ({
    name: "public-keys.json",
    type: jsonType,
    body: `${JSON.stringify({ keys: clinicPublicKeys() }, null, 1)}\n`,
  }));
