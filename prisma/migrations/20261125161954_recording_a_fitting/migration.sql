-- AlterTable
ALTER TABLE "LimbMeasurement" ADD COLUMN "secondReadings" JSONB;

-- AlterTable
ALTER TABLE "User" ADD COLUMN "forceUnit" TEXT;
ALTER TABLE "User" ADD COLUMN "lengthUnit" TEXT;
ALTER TABLE "User" ADD COLUMN "massUnit" TEXT;

-- RedefineTables
PRAGMA defer_foreign_keys=ON;
PRAGMA foreign_keys=OFF;
CREATE TABLE "new_Clinic" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "lengthUnit" TEXT NOT NULL DEFAULT 'mm',
    "massUnit" TEXT NOT NULL DEFAULT 'kg',
    "forceUnit" TEXT NOT NULL DEFAULT 'N',
    "invented" BOOLEAN NOT NULL DEFAULT false,
    "openedAt" DATETIME NOT NULL
);
INSERT INTO "new_Clinic" ("id", "invented", "lengthUnit", "massUnit", "name", "openedAt", "timeZone") SELECT "id", "invented", "lengthUnit", "massUnit", "name", "openedAt", "timeZone" FROM "Clinic";
DROP TABLE "Clinic";
ALTER TABLE "new_Clinic" RENAME TO "Clinic";
CREATE TABLE "new_Fitting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "socketId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "place" TEXT NOT NULL,
    "whoWasThere" TEXT,
    "measuredBy" TEXT,
    "reported" JSONB,
    "correctsId" TEXT,
    "why" TEXT,
    "checks" JSONB NOT NULL,
    "pulls" JSONB NOT NULL,
    "motion" JSONB NOT NULL,
    "comfort" REAL,
    "pain" REAL,
    "words" TEXT,
    "note" TEXT,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    CONSTRAINT "Fitting_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Fitting_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "CheckSocket" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Fitting_correctsId_fkey" FOREIGN KEY ("correctsId") REFERENCES "Fitting" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);
INSERT INTO "new_Fitting" ("at", "byId", "byName", "checks", "comfort", "episodeId", "id", "motion", "note", "pain", "place", "pulls", "recordedAt", "socketId", "whoWasThere", "words") SELECT "at", "byId", "byName", "checks", "comfort", "episodeId", "id", "motion", "note", "pain", "place", "pulls", "recordedAt", "socketId", "whoWasThere", "words" FROM "Fitting";
DROP TABLE "Fitting";
ALTER TABLE "new_Fitting" RENAME TO "Fitting";
CREATE UNIQUE INDEX "Fitting_correctsId_key" ON "Fitting"("correctsId");
CREATE INDEX "Fitting_episodeId_at_idx" ON "Fitting"("episodeId", "at");
CREATE INDEX "Fitting_socketId_at_idx" ON "Fitting"("socketId", "at");
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;
