/**
 * Prepared statements on the clinic's one connection: for what happens so often, or so much at a stake, that a query
 * builder's time shows. Everything else is written with Prisma.
 */
import type { Database as Connection, Statement } from "better-sqlite3";

type Value = string | number | null;

export interface Sql {
  /** The first row, as it lies in the file, or undefined. */
  get(text: string, ...values: Value[]): unknown;
  all(text: string, ...values: Value[]): unknown[];
  run(text: string, ...values: Value[]): void;
}

class PreparedSql implements Sql {
  readonly #connection: Connection;
  readonly #statements = new Map<string, Statement>();

  constructor(connection: Connection) {
    this.#connection = connection;
  }

  get(text: string, ...values: Value[]): unknown {
    return this.#statement(text).get(...values);
  }

  all(text: string, ...values: Value[]): unknown[] {
    return this.#statement(text).all(...values);
  }

  run(text: string, ...values: Value[]): void {
    this.#statement(text).run(...values);
  }

  #statement(text: string): Statement {
    const known = this.#statements.get(text);
    if (known) return known;
    // Prisma's adapter asks for big integers; counts and positions of a clinic are none.
    const made = this.#connection.prepare(text).safeIntegers(false);
    this.#statements.set(text, made);
    return made;
  }
}

// A statement is prepared once for a connection.
const prepared = new WeakMap<Connection, Sql>();

export function sqlOn(connection: Connection): Sql {
  const before = prepared.get(connection);
  if (before) return before;
  const made = new PreparedSql(connection);
  prepared.set(connection, made);
  return made;
}

/** @param check throws where no statement may run any more */
export const checkedSql = (sql: Sql, check: () => void): Sql => ({
  get(text, ...values) {
    check();
    return sql.get(text, ...values);
  },
  all(text, ...values) {
    check();
    return sql.all(text, ...values);
  },
  run(text, ...values) {
    check();
    sql.run(text, ...values);
  },
});

/** An instant as Prisma's adapter writes it, so that the two can be compared and sorted as text. */
export const sqlTime = (at: Date): string => at.toISOString().replace("Z", "+00:00");
