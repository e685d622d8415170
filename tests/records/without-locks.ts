/** For tests that do what an attacker with the database's file could do: the locks are triggers in that file. */
import type { Database as Connection } from "better-sqlite3";

export function dropLocks(connection: Connection): void {
  const triggers = connection.prepare("SELECT name FROM sqlite_master WHERE type = 'trigger'").all() as { name: string }[]; // the column above
  for (const { name } of triggers) connection.exec(`DROP TRIGGER "${name}"`);
}
