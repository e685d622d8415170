-- AlterTable
ALTER TABLE "Episode" ADD COLUMN "adjustmentOutcomes" JSONB;

-- What came of the adjustments so far is worked out by whoever reads or changes records next, as of each episode's own
-- last refresh.
UPDATE "Episode" SET "derivedDue" = COALESCE("derivedAt", "openedAt") WHERE "derivedDue" IS NULL;
