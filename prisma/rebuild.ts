/**
 * Makes the kept stage, next step, due date and decision of every episode anew from its records.
 *
 *   npm run rebuild                (data/clinic.db, or what DATABASE_URL names; stop the server first)
 */
import { closeDatabase } from "@/lib/records/database";
import { rebuildDerived } from "@/lib/records/rebuild";

const count = await rebuildDerived(new Date());
await closeDatabase();
console.log(`${count} ${count === 1 ? "episode" : "episodes"} made anew from the records.`);
