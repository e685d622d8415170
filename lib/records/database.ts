/** The one connection to the clinic's store. */
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import type { SqlDriverAdapter } from "@prisma/driver-adapter-utils";
import type { Database as Connection } from "better-sqlite3";
import { type Prisma, PrismaClient } from "@/lib/generated/prisma/client";
import { anchorHead } from "./anchor-head";
import { clockOffsetMs } from "./clock";
import { logFault } from "./faults";
import { type Sql, sqlOn } from "./sql";

export type Database = PrismaClient;
export type Transaction = Prisma.TransactionClient;

interface Opened {
  client: PrismaClient;
  /** What the client works with, and its connection: statements of both are part of the same transaction. */
  adapter: () => { adapter: SqlDriverAdapter; connection: Connection };
  /** Settled once the connection is set to sync every commit to disk. */
  ready: Promise<void>;
  background: { work: Promise<void>; again: boolean } | null;
}

// Next loads this module anew for each bundle; the process keeps one connection all the same.
const kept = globalThis as typeof globalThis & { fittingLedgerDatabase?: Opened | undefined };

export const database = async (): Promise<Database> => (await opened()).client;

/** The client together with its connection. */
export async function clientAndConnection(): Promise<{ client: Database; connection: Connection }> {
  const { client, adapter } = await opened();
  return { client, connection: adapter().connection };
}

/**
 * A transaction without the client, on its connection and in its turn: the client's own transactions wait for it, and it
 * for them. Whatever is awaited in it must come of itself; a query of the client would be part of it, or wait for ever.
 */
export async function inTurn<Result>(work: (sql: Sql) => Promise<Result>): Promise<Result> {
  const { adapter, connection } = (await opened()).adapter();
  const turn = await adapter.startTransaction();
  try {
    const sql = sqlOn(connection);
    const result = await work(sql);
    sql.run("COMMIT");
    await turn.commit();
    return result;
  } catch (error) {
    if (connection.inTransaction) connection.exec("ROLLBACK");
    await turn.rollback();
    throw error;
  }
}

/** The file of the store; null where it has none. */
export async function databaseFile(): Promise<string | null> {
  const { connection } = (await opened()).adapter();
  return connection.memory ? null : connection.name;
}

async function opened(): Promise<Opened> {
  kept.fittingLedgerDatabase ??= open(process.env.DATABASE_URL ?? "file:data/clinic.db");
  await kept.fittingLedgerDatabase.ready;
  return kept.fittingLedgerDatabase;
}

export async function closeDatabase(): Promise<void> {
  const open = kept.fittingLedgerDatabase;
  while (open?.background) await open.background.work;
  kept.fittingLedgerDatabase = undefined;
  await open?.client.$disconnect();
}

const backgroundDelayMs = 100;

/**
 * Does something a little later, once for all who ask for it meanwhile. Nobody waits for it but the closing of the store:
 * only what is done again by whoever needs it belongs here.
 */
export function inBackground(work: () => Promise<void>): void {
  const open = kept.fittingLedgerDatabase;
  if (!open) return;
  if (open.background) {
    open.background.again = true;
    return;
  }
  const background = { work: Promise.resolve(), again: false };
  background.work = new Promise((resolve) => setTimeout(resolve, backgroundDelayMs))
    .then(() => {
      // Who asks from here on asks for another time.
      background.again = false;
      return work();
    })
    .catch((error: unknown) => void logFault(error, "in the background"))
    .then(() => {
      open.background = null;
      if (background.again) inBackground(work);
    });
  open.background = background;
}

/** Prisma's adapter, which keeps its connection to itself; this one says which it is. */
class AdapterWithConnection extends PrismaBetterSqlite3 {
  connected: { adapter: SqlDriverAdapter; connection: Connection } | undefined;

  override async connect() {
    const adapter = await super.connect();
    const { client: connection } = adapter as unknown as { client: Connection }; // not among its types; every check-in needs it
    this.connected = { adapter, connection };
    return adapter;
  }
}

function open(url: string): Opened {
  const factory = new AdapterWithConnection({ url, timeout: 10_000 });
  const client = new PrismaClient({ adapter: factory });
  const adapter = () => {
    if (factory.connected === undefined) throw new Error("the store is not open yet");
    return factory.connected;
  };
  const ready = setPragmas(client).then(() => {
    refuseMovedClock(adapter().connection);
    keepHead(adapter().connection);
  });
  return { client, adapter, ready, background: null };
}

/** Records of real people get the real time. */
function refuseMovedClock(connection: Connection): void {
  if (clockOffsetMs === 0) return;
  const isReal = connection.prepare("SELECT 1 FROM Clinic WHERE NOT invented").get() !== undefined;
  if (isReal) throw new Error("FITTING_LEDGER_CLOCK_OFFSET_MS moves the clock, and this store is not invented: start without it");
}

/** Where the chain ended when the server began. */
const keepHead = ({ memory, name }: Connection): void => (memory ? undefined : anchorHead(name));

async function setPragmas(client: PrismaClient): Promise<void> {
  await client.$queryRawUnsafe("PRAGMA journal_mode = WAL");
  await client.$queryRawUnsafe("PRAGMA synchronous = FULL");
  await client.$queryRawUnsafe("PRAGMA foreign_keys = ON");
  // Without it a replacing insert deletes rows past the triggers that lock them.
  await client.$queryRawUnsafe("PRAGMA recursive_triggers = ON");
}
