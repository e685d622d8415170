/**
 * Prepared statements on the clinic's one connection: for what happens so often, or so much at a stake, that a query
 * builder's time shows. Everything else is written with Prisma.
 */
import type { Database as Connection, Statement } from "better-sqlite3";

type Value = string | number | null;

export interface Sql {
  /** The first row, as it lies in the file, or undefined. */
  get: (text: string, ...values: Value[]) => unknown;
  all: (text: string, ...values: Value[]) => unknown[];
  run: (text: string, ...values: Value[]) => void;
}

// A statement is prepared once for a connection.
const prepared = new WeakMap<Connection, Map<string, Statement>>();

function statement(connection: Connection, text: string): Statement {
  const known = prepared.get(connection) ?? new Map<string, Statement>();
  prepared.set(connection, known);
  const before = known.get(text);
  if (before) return before;
  // Prisma's adapter asks for big integers; counts and positions of a clinic are none.
  const made = connection.prepare(text).safeIntegers(false);
  known.set(text, made);
  return made;
}

/** @param check throws where no statement may run any more */
export const sqlOn = (connection: Connection, check: () => void = () => {}): Sql => ({
  get: (text, ...values) => {
    check();
    return statement(connection, text).get(...values);
  },
  all: (text, ...values) => {
    check();
    return statement(connection, text).all(...values);
  },
  run: (text, ...values) => {
    check();
    statement(connection, text).run(...values);
  },
});

/** An instant as Prisma's adapter writes it, so that the two can be compared and sorted as text. */
export const sqlTime = (at: Date): string => at.toISOString().replace("Z", "+00:00");
