/**
 * Loads the invented clinic into the empty, migrated database that DATABASE_URL names: as of now or, where a day is
 * named, as of its noon. Its last line is one of JSON: what has come of every episode.
 */
import { now } from "@/lib/records/clock";
import { closeDatabase } from "@/lib/records/database";
import { countRecords, loadInventedClinic, outcomesInStore } from ".";
import { clinicName, demoAccounts, demoPassword } from "./accounts";
import { noonOf } from "./calendar";

if (!process.env.DATABASE_URL) throw new Error("Say in DATABASE_URL which database to fill, as file:/tmp/invented.db.");

const [, , day] = process.argv;
await loadInventedClinic({ today: day === undefined ? now() : noonOf(day) });
const counts = Object.entries(await countRecords()).map(([what, count]) => `${count} ${what}`);
const accounts = demoAccounts.map(({ name, email, role }) => `  ${email}  ${name}, ${role}`);
const episodes = await outcomesInStore();
await closeDatabase();

console.log(`${clinicName}, invented: ${counts.join(", ")}.`);
console.log(`Accounts, each with the password ${demoPassword}:\n${accounts.join("\n")}`);
console.log(JSON.stringify({ episodes }));
