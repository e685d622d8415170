import { type Limits, limitsWith } from "@/lib/fit";
import type { Transaction } from "./database";

/** This clinic's own values by the id of the limit, the newest of each. */
export async function ownLimits(db: Transaction): Promise<Record<string, number>> {
  const rows = await db.limit.findMany({ orderBy: { version: "asc" }, select: { name: true, value: true } });
  return Object.fromEntries(rows.map(({ name, value }) => [name, value]));
}

/** The published and customary limits with this clinic's own settings laid over them. */
export const limitsInForce = async (db: Transaction): Promise<Limits> => limitsWith(await ownLimits(db));
