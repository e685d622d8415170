import { anchorHead } from "./anchor-head";
import { databaseFile } from "./database";
import { logFault } from "./faults";

/** To be called once something weighty was committed: keeps the chain's present end apart from it. It never fails. */
export async function anchorTrail(): Promise<void> {
  try {
    const file = await databaseFile();
    if (file !== null) anchorHead(file);
  } catch (error) {
    logFault(error, "keeping the end of the chain apart from it");
  }
}
