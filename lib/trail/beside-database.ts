/** Files that belong to a store and lie beside it: its keys, the heads of its record. */
import path from "node:path";

/** @param databaseUrl as in DATABASE_URL: `file:data/clinic.db` */
export const databaseFile = (databaseUrl = process.env.DATABASE_URL ?? "file:data/clinic.db"): string =>
  path.resolve(databaseUrl.replace(/^file:(\/\/)?/, "").replace(/\?.*$/, ""));

export const keysBeside = (database: string): string => `${database}.keys`;

/** Ends of the record that are kept apart from it (anchors.ts). */
export const headsBeside = (database: string): string => `${database}.heads`;
