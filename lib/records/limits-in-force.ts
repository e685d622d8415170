import { defaultLimits, type Limits, limitsWith } from "@/lib/fit";
import type { Transaction } from "./database";

/** The published and customary limits with this clinic's own settings laid over them. */
export async function limitsInForce(db: Transaction): Promise<Limits> {
  const rows = await db.limit.findMany({ orderBy: { version: "asc" }, select: { name: true, value: true } });
  return rows.length === 0 ? defaultLimits : limitsWith(Object.fromEntries(rows.map(({ name, value }) => [name, value])));
}
