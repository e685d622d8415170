-- AlterTable
ALTER TABLE "SignOff" ADD COLUMN "countersignAsked" BOOLEAN;
ALTER TABLE "SignOff" ADD COLUMN "signature" TEXT;

-- AlterTable
ALTER TABLE "User" ADD COLUMN "twoFactorEnabled" BOOLEAN DEFAULT false;

-- AlterTable
ALTER TABLE "Withdrawal" ADD COLUMN "signature" TEXT;
ALTER TABLE "Withdrawal" ADD COLUMN "statement" TEXT;

-- CreateTable
CREATE TABLE "TwoFactor" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "secret" TEXT NOT NULL,
    "backupCodes" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "verified" BOOLEAN DEFAULT true,
    "failedVerificationCount" INTEGER DEFAULT 0,
    "lockedUntil" DATETIME,
    "lastStep" INTEGER,
    CONSTRAINT "TwoFactor_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Countersignature" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "signOffId" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "credentialsLine" TEXT,
    "at" DATETIME NOT NULL,
    "statement" TEXT NOT NULL,
    "signature" TEXT NOT NULL,
    CONSTRAINT "Countersignature_signOffId_fkey" FOREIGN KEY ("signOffId") REFERENCES "SignOff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Addendum" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "signOffId" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "statement" TEXT NOT NULL,
    "signature" TEXT NOT NULL,
    CONSTRAINT "Addendum_signOffId_fkey" FOREIGN KEY ("signOffId") REFERENCES "SignOff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

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
    "phone" TEXT,
    "invented" BOOLEAN NOT NULL DEFAULT false,
    "countersignReleases" BOOLEAN NOT NULL DEFAULT false,
    "openedAt" DATETIME NOT NULL
);
INSERT INTO "new_Clinic" ("forceUnit", "id", "invented", "lengthUnit", "massUnit", "name", "openedAt", "phone", "timeZone") SELECT "forceUnit", "id", "invented", "lengthUnit", "massUnit", "name", "openedAt", "phone", "timeZone" FROM "Clinic";
DROP TABLE "Clinic";
ALTER TABLE "new_Clinic" RENAME TO "Clinic";
PRAGMA foreign_keys=ON;
PRAGMA defer_foreign_keys=OFF;

-- CreateIndex
CREATE INDEX "TwoFactor_userId_idx" ON "TwoFactor"("userId");

-- CreateIndex
CREATE INDEX "TwoFactor_secret_idx" ON "TwoFactor"("secret");

-- CreateIndex
CREATE UNIQUE INDEX "Countersignature_signOffId_key" ON "Countersignature"("signOffId");

-- CreateIndex
CREATE INDEX "Addendum_signOffId_idx" ON "Addendum"("signOffId");

-- Locks. They hold for plain SQL too; whoever drops them shows in `npm run verify -- --record`.

-- What is only ever added.
CREATE TRIGGER "TrailEntry_no_update" BEFORE UPDATE ON "TrailEntry"
BEGIN SELECT RAISE(ABORT, 'locked: the trail is only added to'); END;
CREATE TRIGGER "TrailEntry_no_delete" BEFORE DELETE ON "TrailEntry"
BEGIN SELECT RAISE(ABORT, 'locked: the trail is only added to'); END;
CREATE TRIGGER "SignOff_no_update" BEFORE UPDATE ON "SignOff"
BEGIN SELECT RAISE(ABORT, 'locked: a signature is never changed'); END;
CREATE TRIGGER "SignOff_no_delete" BEFORE DELETE ON "SignOff"
BEGIN SELECT RAISE(ABORT, 'locked: a signature is never changed'); END;
CREATE TRIGGER "Withdrawal_no_update" BEFORE UPDATE ON "Withdrawal"
BEGIN SELECT RAISE(ABORT, 'locked: a withdrawal is never changed'); END;
CREATE TRIGGER "Withdrawal_no_delete" BEFORE DELETE ON "Withdrawal"
BEGIN SELECT RAISE(ABORT, 'locked: a withdrawal is never changed'); END;
CREATE TRIGGER "Countersignature_no_update" BEFORE UPDATE ON "Countersignature"
BEGIN SELECT RAISE(ABORT, 'locked: a signature is never changed'); END;
CREATE TRIGGER "Countersignature_no_delete" BEFORE DELETE ON "Countersignature"
BEGIN SELECT RAISE(ABORT, 'locked: a signature is never changed'); END;
CREATE TRIGGER "Addendum_no_update" BEFORE UPDATE ON "Addendum"
BEGIN SELECT RAISE(ABORT, 'locked: an addendum is never changed'); END;
CREATE TRIGGER "Addendum_no_delete" BEFORE DELETE ON "Addendum"
BEGIN SELECT RAISE(ABORT, 'locked: an addendum is never changed'); END;
CREATE TRIGGER "GateAcceptance_no_update" BEFORE UPDATE ON "GateAcceptance"
BEGIN SELECT RAISE(ABORT, 'locked: an acceptance is part of a signature'); END;
CREATE TRIGGER "GateAcceptance_no_delete" BEFORE DELETE ON "GateAcceptance"
BEGIN SELECT RAISE(ABORT, 'locked: an acceptance is part of a signature'); END;
CREATE TRIGGER "LimbMeasurement_no_update" BEFORE UPDATE ON "LimbMeasurement"
BEGIN SELECT RAISE(ABORT, 'locked: a measurement is never changed'); END;
CREATE TRIGGER "LimbMeasurement_no_delete" BEFORE DELETE ON "LimbMeasurement"
BEGIN SELECT RAISE(ABORT, 'locked: a measurement is never changed'); END;
CREATE TRIGGER "Fitting_no_update" BEFORE UPDATE ON "Fitting"
BEGIN SELECT RAISE(ABORT, 'locked: a fitting is put right by another one'); END;
CREATE TRIGGER "Fitting_no_delete" BEFORE DELETE ON "Fitting"
BEGIN SELECT RAISE(ABORT, 'locked: a fitting is put right by another one'); END;
CREATE TRIGGER "TrialEvent_no_update" BEFORE UPDATE ON "TrialEvent"
BEGIN SELECT RAISE(ABORT, 'locked: events of a trial are only added'); END;
CREATE TRIGGER "TrialEvent_no_delete" BEFORE DELETE ON "TrialEvent"
BEGIN SELECT RAISE(ABORT, 'locked: events of a trial are only added'); END;
CREATE TRIGGER "SetAsideEvent_no_update" BEFORE UPDATE ON "SetAsideEvent"
BEGIN SELECT RAISE(ABORT, 'locked: what a device sent is only added'); END;
CREATE TRIGGER "SetAsideEvent_no_delete" BEFORE DELETE ON "SetAsideEvent"
BEGIN SELECT RAISE(ABORT, 'locked: what a device sent is only added'); END;
CREATE TRIGGER "SkinInspection_no_update" BEFORE UPDATE ON "SkinInspection"
BEGIN SELECT RAISE(ABORT, 'locked: a look at the skin is never changed'); END;
CREATE TRIGGER "SkinInspection_no_delete" BEFORE DELETE ON "SkinInspection"
BEGIN SELECT RAISE(ABORT, 'locked: a look at the skin is never changed'); END;
CREATE TRIGGER "SkinMark_no_update" BEFORE UPDATE ON "SkinMark"
BEGIN SELECT RAISE(ABORT, 'locked: a look at the skin is never changed'); END;
CREATE TRIGGER "SkinMark_no_delete" BEFORE DELETE ON "SkinMark"
BEGIN SELECT RAISE(ABORT, 'locked: a look at the skin is never changed'); END;
CREATE TRIGGER "SocketStateChange_no_update" BEFORE UPDATE ON "SocketStateChange"
BEGIN SELECT RAISE(ABORT, 'locked: the way of a socket is only added to'); END;
CREATE TRIGGER "SocketStateChange_no_delete" BEFORE DELETE ON "SocketStateChange"
BEGIN SELECT RAISE(ABORT, 'locked: the way of a socket is only added to'); END;
CREATE TRIGGER "CautionAcknowledgement_no_update" BEFORE UPDATE ON "CautionAcknowledgement"
BEGIN SELECT RAISE(ABORT, 'locked: what was read stays read'); END;
CREATE TRIGGER "CautionAcknowledgement_no_delete" BEFORE DELETE ON "CautionAcknowledgement"
BEGIN SELECT RAISE(ABORT, 'locked: what was read stays read'); END;
CREATE TRIGGER "MadeCheck_no_update" BEFORE UPDATE ON "MadeCheck"
BEGIN SELECT RAISE(ABORT, 'locked: a check is never changed'); END;
CREATE TRIGGER "MadeCheck_no_delete" BEFORE DELETE ON "MadeCheck"
BEGIN SELECT RAISE(ABORT, 'locked: a check is never changed'); END;
CREATE TRIGGER "WearPlan_no_update" BEFORE UPDATE ON "WearPlan"
BEGIN SELECT RAISE(ABORT, 'locked: a plan is followed by another one'); END;
CREATE TRIGGER "WearPlan_no_delete" BEFORE DELETE ON "WearPlan"
BEGIN SELECT RAISE(ABORT, 'locked: a plan is followed by another one'); END;
CREATE TRIGGER "Limit_no_update" BEFORE UPDATE ON "Limit"
BEGIN SELECT RAISE(ABORT, 'locked: a limit is followed by another one'); END;
CREATE TRIGGER "Limit_no_delete" BEFORE DELETE ON "Limit"
BEGIN SELECT RAISE(ABORT, 'locked: a limit is followed by another one'); END;

-- A replacing insert deletes the old row without asking the triggers of DELETE, unless the connection asks for it.
CREATE TRIGGER "TrailEntry_no_replace" BEFORE INSERT ON "TrailEntry"
WHEN EXISTS (SELECT 1 FROM "TrailEntry" WHERE "position" = NEW."position")
BEGIN SELECT RAISE(ABORT, 'locked: there is one already'); END;
CREATE TRIGGER "SignOff_no_replace" BEFORE INSERT ON "SignOff"
WHEN EXISTS (SELECT 1 FROM "SignOff" WHERE "id" = NEW."id" OR "position" = NEW."position")
BEGIN SELECT RAISE(ABORT, 'locked: there is one already'); END;
CREATE TRIGGER "Withdrawal_no_replace" BEFORE INSERT ON "Withdrawal"
WHEN EXISTS (SELECT 1 FROM "Withdrawal" WHERE "id" = NEW."id" OR "signOffId" = NEW."signOffId")
BEGIN SELECT RAISE(ABORT, 'locked: there is one already'); END;
CREATE TRIGGER "Countersignature_no_replace" BEFORE INSERT ON "Countersignature"
WHEN EXISTS (SELECT 1 FROM "Countersignature" WHERE "id" = NEW."id" OR "signOffId" = NEW."signOffId")
BEGIN SELECT RAISE(ABORT, 'locked: there is one already'); END;
CREATE TRIGGER "Addendum_no_replace" BEFORE INSERT ON "Addendum"
WHEN EXISTS (SELECT 1 FROM "Addendum" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'locked: there is one already'); END;
CREATE TRIGGER "GateAcceptance_no_replace" BEFORE INSERT ON "GateAcceptance"
WHEN EXISTS (SELECT 1 FROM "GateAcceptance" WHERE "id" = NEW."id")
BEGIN SELECT RAISE(ABORT, 'locked: there is one already'); END;

-- What changes until it is signed, and is never deleted.
CREATE TRIGGER "Wearer_no_delete" BEFORE DELETE ON "Wearer"
BEGIN SELECT RAISE(ABORT, 'locked: nothing clinical is deleted'); END;
CREATE TRIGGER "Caution_no_delete" BEFORE DELETE ON "Caution"
BEGIN SELECT RAISE(ABORT, 'locked: nothing clinical is deleted'); END;
CREATE TRIGGER "Episode_no_delete" BEFORE DELETE ON "Episode"
BEGIN SELECT RAISE(ABORT, 'locked: nothing clinical is deleted'); END;
CREATE TRIGGER "CheckSocket_no_delete" BEFORE DELETE ON "CheckSocket"
BEGIN SELECT RAISE(ABORT, 'locked: nothing clinical is deleted'); END;
CREATE TRIGGER "Adjustment_no_delete" BEFORE DELETE ON "Adjustment"
BEGIN SELECT RAISE(ABORT, 'locked: nothing clinical is deleted'); END;
CREATE TRIGGER "WearTrial_no_delete" BEFORE DELETE ON "WearTrial"
BEGIN SELECT RAISE(ABORT, 'locked: nothing clinical is deleted'); END;
CREATE TRIGGER "CheckSocket_signed" BEFORE UPDATE OF "id", "episodeId", "number", "derivedFromId", "limbMeasurementId", "stations", "lengthMm", "material", "wallMm", "suspension", "trimLines", "benchNote", "specifiedById", "specifiedByName", "specifiedAt" ON "CheckSocket"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = OLD."episodeId" AND s."at" >= OLD."specifiedAt"
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: a signature covers this'); END;
CREATE TRIGGER "Adjustment_signed" BEFORE UPDATE OF "id", "episodeId", "socketId", "carriedFromId", "position", "aspect", "third", "kind", "amount", "unit", "reason", "answers", "byId", "byName", "at", "droppedAt", "droppedById", "droppedWhy" ON "Adjustment"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = OLD."episodeId" AND s."at" >= OLD."at"
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: a signature covers this'); END;
CREATE TRIGGER "WearTrial_signed" BEFORE UPDATE OF "id", "episodeId", "socketId", "minutes", "loadKg", "loadDistanceMm", "intervalMin", "activities", "watchedBy", "enteredAfterwards", "plannedById", "plannedByName", "plannedAt" ON "WearTrial"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = OLD."episodeId" AND s."at" >= OLD."plannedAt"
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: a signature covers this'); END;
CREATE TRIGGER "Episode_released" BEFORE UPDATE OF "id", "wearerId", "side", "level", "cause", "lossOn", "landmark", "stationsFrom", "limbLengthMm", "suspension", "deviceMassKg", "deviceCentreOfMassMm", "deviceNote" ON "Episode"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = OLD."id" AND s."meaning" = 'release for definitive fabrication'
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: a signature covers this'); END;

-- Nothing is added to the evidence of a released episode: what comes after is an addendum, or follows a withdrawal.
CREATE TRIGGER "LimbMeasurement_released" BEFORE INSERT ON "LimbMeasurement"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = NEW."episodeId" AND s."meaning" = 'release for definitive fabrication'
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: this episode is released'); END;
CREATE TRIGGER "CheckSocket_released" BEFORE INSERT ON "CheckSocket"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = NEW."episodeId" AND s."meaning" = 'release for definitive fabrication'
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: this episode is released'); END;
CREATE TRIGGER "Adjustment_released" BEFORE INSERT ON "Adjustment"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = NEW."episodeId" AND s."meaning" = 'release for definitive fabrication'
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: this episode is released'); END;
CREATE TRIGGER "Fitting_released" BEFORE INSERT ON "Fitting"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = NEW."episodeId" AND s."meaning" = 'release for definitive fabrication'
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: this episode is released'); END;
CREATE TRIGGER "WearTrial_released" BEFORE INSERT ON "WearTrial"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = NEW."episodeId" AND s."meaning" = 'release for definitive fabrication'
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: this episode is released'); END;
CREATE TRIGGER "TrialEvent_released" BEFORE INSERT ON "TrialEvent"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = (SELECT t."episodeId" FROM "WearTrial" t WHERE t."id" = NEW."trialId") AND s."meaning" = 'release for definitive fabrication'
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: this episode is released'); END;
CREATE TRIGGER "SkinInspection_released" BEFORE INSERT ON "SkinInspection"
WHEN EXISTS (SELECT 1 FROM "SignOff" s WHERE s."episodeId" = COALESCE((SELECT t."episodeId" FROM "WearTrial" t WHERE t."id" = NEW."trialId"), (SELECT f."episodeId" FROM "Fitting" f WHERE f."id" = NEW."fittingId")) AND s."meaning" = 'release for definitive fabrication'
    AND NOT EXISTS (SELECT 1 FROM "Withdrawal" w WHERE w."signOffId" = s."id"))
BEGIN SELECT RAISE(ABORT, 'locked: this episode is released'); END;
