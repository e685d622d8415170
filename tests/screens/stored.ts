/** What stands in the database that a test's server uses; read beside it, never written. */
import Database from "better-sqlite3";

export function stored(file: string, sql: string): Record<string, string> {
  const database = new Database(file, { readonly: true });
  try {
    const row = database.prepare(sql).get();
    if (row === undefined) throw new Error(`the invented clinic has nothing for: ${sql}`);
    return Object.fromEntries(Object.entries(row as Record<string, unknown>).map(([name, value]) => [name, String(value)])); // better-sqlite3 types a row as unknown
  } finally {
    database.close();
  }
}
