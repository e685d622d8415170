/**
 * Derived columns that are made anew a moment after the change: the change marks its episode as due in its own
 * transaction, so that no crash in between can leave a column that looks right and is not. Whoever reads or changes
 * records settles first what is due.
 */
import { z } from "zod";
import { clientAndConnection, type Transaction } from "./database";
import { refreshDerived } from "./derived-state";
import { logFault } from "./faults";
import { type Sql, sqlOn, sqlTime } from "./sql";

/** The episode's evidence has changed, and what follows from it is due as of then. */
export function markDue(sql: Sql, episodeId: string, asOf: Date): void {
  sql.run("UPDATE Episode SET evidenceVersion = evidenceVersion + 1, derivedDue = ? WHERE id = ?", sqlTime(asOf), episodeId);
}

const Due = z.object({ id: z.string(), derivedDue: z.string() });

const dueNow = (sql: Sql) =>
  sql.all("SELECT id, derivedDue FROM Episode WHERE derivedDue IS NOT NULL").map((row) => Due.parse(row));

/** Within a transaction. An episode that cannot be judged stays due, and holds up no other. */
export async function settleIn(transaction: Transaction, sql: Sql): Promise<void> {
  await settle(transaction, dueNow(sql));
}

async function settle(transaction: Transaction, due: readonly z.infer<typeof Due>[]): Promise<void> {
  for (const { id, derivedDue } of due) {
    try {
      await refreshDerived(transaction, id, { asOf: new Date(derivedDue), evidenceChanged: false });
    } catch (error) {
      logFault(error, "settling what is due");
    }
  }
}

/** After an upgrade all episodes of a clinic may be due: so many at a time are judged well within what a transaction may take. */
const mostAtOnce = 50;

/** By itself, where anything is due. */
export async function settleDue(): Promise<void> {
  const { client, connection } = await clientAndConnection();
  const sql = sqlOn(connection);
  const asked = dueNow(sql).map(({ id }) => id);
  for (let first = 0; first < asked.length; first += mostAtOnce) {
    const turn = new Set(asked.slice(first, first + mostAtOnce));
    const settleTurn = (transaction: Transaction) =>
      // Read anew: another change may have come, or been settled, meanwhile.
      settle(
        transaction,
        dueNow(sql).filter(({ id }) => turn.has(id)),
      );
    await client.$transaction(settleTurn, { timeout: 30_000, maxWait: 30_000 });
  }
}
