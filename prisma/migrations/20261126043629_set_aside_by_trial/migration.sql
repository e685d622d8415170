-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_SetAsideEvent" (
    "id" TEXT NOT NULL,
    "trialId" TEXT NOT NULL,
    "event" JSONB NOT NULL,
    "why" TEXT NOT NULL,
    "recordedById" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL,

    PRIMARY KEY ("trialId", "id"),
    CONSTRAINT "SetAsideEvent_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "WearTrial" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_SetAsideEvent" ("event", "id", "receivedAt", "recordedById", "trialId", "why") SELECT "event", "id", "receivedAt", "recordedById", "trialId", "why" FROM "SetAsideEvent";
DROP TABLE "SetAsideEvent";
ALTER TABLE "new_SetAsideEvent" RENAME TO "SetAsideEvent";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
