import { NextResponse } from "next/server";
import { currentActor } from "@/lib/access/session";
import { clinicPublicKeys } from "@/lib/records/clinic-signature";

/** The clinic's public keys as a JSON Web Key Set (RFC 7517), for whoever is to check its releases. */
export async function GET(): Promise<Response> {
  if (!(await currentActor())) return NextResponse.json({ error: "Sign in first." }, { status: 401 });
  return NextResponse.json(
    { keys: clinicPublicKeys() },
    { headers: { "content-disposition": 'attachment; filename="public-keys.json"', "cache-control": "no-store" } },
  );
}
