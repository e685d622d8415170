/** Entries as they lie in the store's file: text and numbers, the time as the store writes it. */
export const storedColumns = [
  "position",
  "at",
  "actorId",
  "actorName",
  "actorRole",
  "action",
  "recordKind",
  "recordId",
  "wearerId",
  "episodeId",
  "before",
  "after",
  "previousDigest",
  "digest",
] as const;

const storedTime = /^\d{4}-\d\d-\d\dT\d\d:\d\d:\d\d\.\d{3}\+00:00$/;

/**
 * The instant as it is hashed; null where it is not written the way the store writes it.
 *
 * @example hashedTime("2026-10-05T10:00:00.000+00:00") // => "2026-10-05T10:00:00.000Z"
 */
export const hashedTime = (stored: string): string | null => (storedTime.test(stored) ? `${stored.slice(0, 23)}Z` : null);

const hashedColumns = [
  ...["action", "actorId", "actorName", "actorRole", "after", "at", "before", "episodeId"],
  ...["position", "previousDigest", "recordId", "recordKind", "wearerId"],
];

/** An SQL expression for the text that `entryJson` gives of a row whose time `hashedTime` knows. */
export const entryJsonSql = `json_object(${hashedColumns
  .map((column) => `'${column}', ${column === "at" ? "substr(at, 1, 23) || 'Z'" : `"${column}"`}`)
  .join(", ")})`;
