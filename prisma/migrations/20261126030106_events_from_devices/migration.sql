-- AlterTable
ALTER TABLE "TrialEvent" ADD COLUMN "deviceAt" DATETIME;

-- CreateTable
CREATE TABLE "SetAsideEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trialId" TEXT NOT NULL,
    "event" JSONB NOT NULL,
    "why" TEXT NOT NULL,
    "recordedById" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    CONSTRAINT "SetAsideEvent_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "WearTrial" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE INDEX "SetAsideEvent_trialId_idx" ON "SetAsideEvent"("trialId");
