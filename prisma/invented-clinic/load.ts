/** Loads the invented clinic into the empty, migrated database that DATABASE_URL names, as of today. */
import { closeDatabase } from "@/lib/records/database";
import { countRecords, loadInventedClinic } from ".";
import { clinicName, demoAccounts, demoPassword } from "./accounts";

if (!process.env.DATABASE_URL) throw new Error("Say in DATABASE_URL which database to fill, as file:/tmp/invented.db.");

await loadInventedClinic({ today: new Date() });
const counts = Object.entries(await countRecords()).map(([what, count]) => `${count} ${what}`);
const accounts = demoAccounts.map(({ name, email, role }) => `  ${email}  ${name}, ${role}`);
await closeDatabase();

console.log(`${clinicName}, invented: ${counts.join(", ")}.`);
console.log(`Accounts, each with the password ${demoPassword}:\n${accounts.join("\n")}`);
