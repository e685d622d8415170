import { cache } from "react";
import { database } from "./database";

export interface ClinicSettings {
  name: string;
  timeZone: string;
  /** Whom a wearer calls. */
  phone: string | null;
  invented: boolean;
  lengthUnit: string;
  massUnit: string;
  forceUnit: string;
}

/** The clinic that this store belongs to; null before its first run. Read once a request. */
export const clinicSettings = cache(
  async (): Promise<ClinicSettings | null> => (await database()).clinic.findUnique({ where: { id: 1 } }),
);
