/** The one connection to the clinic's store. */
import { PrismaBetterSqlite3 } from "@prisma/adapter-better-sqlite3";
import { type Prisma, PrismaClient } from "@/lib/generated/prisma/client";

export type Database = PrismaClient;
export type Transaction = Prisma.TransactionClient;

interface Opened {
  client: PrismaClient;
  /** Settled once the connection is set to sync every commit to disk. */
  ready: Promise<void>;
}

// Next loads this module anew for each bundle; the process keeps one connection all the same.
const kept = globalThis as typeof globalThis & { fittingLedgerDatabase?: Opened | undefined };

export async function database(): Promise<Database> {
  kept.fittingLedgerDatabase ??= open(process.env.DATABASE_URL ?? "file:data/clinic.db");
  await kept.fittingLedgerDatabase.ready;
  return kept.fittingLedgerDatabase.client;
}

export async function closeDatabase(): Promise<void> {
  const opened = kept.fittingLedgerDatabase;
  kept.fittingLedgerDatabase = undefined;
  await opened?.client.$disconnect();
}

function open(url: string): Opened {
  const client = new PrismaClient({ adapter: new PrismaBetterSqlite3({ url, timeout: 10_000 }) });
  return { client, ready: setPragmas(client) };
}

async function setPragmas(client: PrismaClient): Promise<void> {
  await client.$queryRawUnsafe("PRAGMA journal_mode = WAL");
  await client.$queryRawUnsafe("PRAGMA synchronous = FULL");
  await client.$queryRawUnsafe("PRAGMA foreign_keys = ON");
}
