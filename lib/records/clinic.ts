import { cache } from "react";
import { database } from "./database";

export interface ClinicSettings {
  name: string;
  timeZone: string;
  /** Whom a wearer calls. */
  phone: string | null;
  invented: boolean;
  /** A release is in force only once a second prosthetist has signed it too. */
  countersignReleases: boolean | null;
  lengthUnit: string;
  massUnit: string;
  forceUnit: string;
}

/** The clinic that this store belongs to; null before its first run. Read once a request. */
export const clinicSettings = cache(
  async (): Promise<ClinicSettings | null> => (await database()).clinic.findUnique({ where: { id: 1 } }),
);
