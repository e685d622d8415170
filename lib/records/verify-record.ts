import { anchorHead } from "./anchor-head";
import { checkRecord, type Progress, type RecordCheck } from "./check-record";
import { databaseFile } from "./database";
import { query } from "./query";

const dayMs = 24 * 60 * 60_000;

/** Checks the whole record. Where it holds, its end is kept apart from it, once a day at most. */
export const verifyRecord = query({
  permission: "see the record",
  read: async (_db, asked: { progress: Progress } | null): Promise<RecordCheck> => {
    const file = await databaseFile();
    if (file === null) throw new Error("this store has no file whose record could be checked");
    const check = await checkRecord(file, asked?.progress);
    if (check.holds) anchorHead(file, { unlessWithinMs: dayMs });
    return check;
  },
});
