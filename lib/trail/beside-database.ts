/** A store's file, and what lies beside it: its keys, the ends of its record that were kept apart. */
import path from "node:path";

/** The file that is named, open or not. @param databaseUrl as in DATABASE_URL: `file:data/clinic.db` */
export const databaseFileNamed = (databaseUrl = process.env.DATABASE_URL ?? "file:data/clinic.db"): string =>
  path.resolve(databaseUrl.replace(/^file:(\/\/)?/, "").replace(/\?.*$/, ""));

export const keysBeside = (database: string): string => `${database}.keys`;

/** Ends of the record that are kept apart from it (anchors.ts). */
export const headsBeside = (database: string): string => `${database}.heads`;
