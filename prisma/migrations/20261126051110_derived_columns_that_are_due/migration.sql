-- AlterTable
ALTER TABLE "Episode" ADD COLUMN "derivedDue" DATETIME;

-- CreateIndex
CREATE INDEX "Episode_derivedDue_idx" ON "Episode"("derivedDue");
