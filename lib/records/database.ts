/** The one connection to the clinic's store. */
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import type { Database as Connection } from "better-sqlite3";
import { type Prisma, PrismaClient } from "@/lib/generated/prisma/client";
import { logFault } from "./faults";

export type Database = PrismaClient;
export type Transaction = Prisma.TransactionClient;

interface Opened {
  client: PrismaClient;
  /** The connection that the client works on: statements of both are part of the same transaction. */
  connection: () => Connection;
  /** Settled once the connection is set to sync every commit to disk. */
  ready: Promise<void>;
  background: { work: Promise<void>; again: boolean } | null;
}

// Next loads this module anew for each bundle; the process keeps one connection all the same.
const kept = globalThis as typeof globalThis & { fittingLedgerDatabase?: Opened | undefined };

export const database = async (): Promise<Database> => (await opened()).client;

/** The client together with its connection. */
export async function clientAndConnection(): Promise<{ client: Database; connection: Connection }> {
  const { client, connection } = await opened();
  return { client, connection: connection() };
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
  connection: Connection | undefined;

  override async connect() {
    const adapter = await super.connect();
    this.connection = (adapter as unknown as { client: Connection }).client; // not among its types; a test holds it to that
    return adapter;
  }
}

function open(url: string): Opened {
  const adapter = new AdapterWithConnection({ url, timeout: 10_000 });
  const client = new PrismaClient({ adapter });
  const connection = () => {
    if (adapter.connection === undefined) throw new Error("the store is not open yet");
    return adapter.connection;
  };
  return { client, connection, ready: setPragmas(client), background: null };
}

async function setPragmas(client: PrismaClient): Promise<void> {
  await client.$queryRawUnsafe("PRAGMA journal_mode = WAL");
  await client.$queryRawUnsafe("PRAGMA synchronous = FULL");
  await client.$queryRawUnsafe("PRAGMA foreign_keys = ON");
}
