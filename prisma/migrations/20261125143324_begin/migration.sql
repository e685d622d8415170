-- CreateTable
CREATE TABLE "Clinic" (
    "id" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT DEFAULT 1,
    "name" TEXT NOT NULL,
    "timeZone" TEXT NOT NULL,
    "lengthUnit" TEXT NOT NULL DEFAULT 'mm',
    "massUnit" TEXT NOT NULL DEFAULT 'kg',
    "invented" BOOLEAN NOT NULL DEFAULT false,
    "openedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "User" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "email" TEXT NOT NULL,
    "emailVerified" BOOLEAN NOT NULL DEFAULT false,
    "image" TEXT,
    "role" TEXT NOT NULL,
    "credentialsLine" TEXT,
    "banned" BOOLEAN DEFAULT false,
    "banReason" TEXT,
    "banExpires" DATETIME,
    "version" INTEGER NOT NULL DEFAULT 1,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Session" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "token" TEXT NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "ipAddress" TEXT,
    "userAgent" TEXT,
    "impersonatedBy" TEXT,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    "userId" TEXT NOT NULL,
    CONSTRAINT "Session_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Credential" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "accountId" TEXT NOT NULL,
    "providerId" TEXT NOT NULL,
    "userId" TEXT NOT NULL,
    "accessToken" TEXT,
    "refreshToken" TEXT,
    "idToken" TEXT,
    "accessTokenExpiresAt" DATETIME,
    "refreshTokenExpiresAt" DATETIME,
    "scope" TEXT,
    "password" TEXT,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL,
    CONSTRAINT "Credential_userId_fkey" FOREIGN KEY ("userId") REFERENCES "User" ("id") ON DELETE CASCADE ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Verification" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "identifier" TEXT NOT NULL,
    "value" TEXT NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "createdAt" DATETIME NOT NULL,
    "updatedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Wearer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "clinicNumber" TEXT NOT NULL,
    "name" TEXT NOT NULL,
    "birthOn" TEXT,
    "heightMm" REAL,
    "bodyMassKg" REAL,
    "handedness" TEXT,
    "occupation" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "addedById" TEXT NOT NULL,
    "addedAt" DATETIME NOT NULL
);

-- CreateTable
CREATE TABLE "Caution" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "wearerId" TEXT NOT NULL,
    "kind" TEXT NOT NULL,
    "note" TEXT,
    "addedById" TEXT NOT NULL,
    "addedAt" DATETIME NOT NULL,
    "endedAt" DATETIME,
    "endedById" TEXT,
    "endedWhy" TEXT,
    CONSTRAINT "Caution_wearerId_fkey" FOREIGN KEY ("wearerId") REFERENCES "Wearer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CautionAcknowledgement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "cautionId" TEXT NOT NULL,
    "episodeId" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "CautionAcknowledgement_cautionId_fkey" FOREIGN KEY ("cautionId") REFERENCES "Caution" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "CautionAcknowledgement_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Episode" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "wearerId" TEXT NOT NULL,
    "side" TEXT NOT NULL,
    "level" TEXT NOT NULL,
    "cause" TEXT NOT NULL,
    "lossOn" TEXT,
    "landmark" TEXT NOT NULL,
    "stationsFrom" TEXT NOT NULL,
    "limbLengthMm" REAL NOT NULL,
    "suspension" TEXT NOT NULL,
    "deviceMassKg" REAL,
    "deviceCentreOfMassMm" REAL,
    "deviceNote" TEXT,
    "goals" TEXT,
    "targetOn" TEXT,
    "prosthetistId" TEXT NOT NULL,
    "openedById" TEXT NOT NULL,
    "openedAt" DATETIME NOT NULL,
    "onHoldAt" DATETIME,
    "onHoldWhy" TEXT,
    "closedAt" DATETIME,
    "closedWhy" TEXT,
    "deliveredAt" DATETIME,
    "struckOutAt" DATETIME,
    "struckOutById" TEXT,
    "struckOutWhy" TEXT,
    "version" INTEGER NOT NULL DEFAULT 1,
    "evidenceVersion" INTEGER NOT NULL DEFAULT 0,
    "stage" TEXT NOT NULL DEFAULT 'assessment',
    "nextStep" TEXT,
    "nextWho" TEXT,
    "nextWhy" TEXT,
    "dueOn" TEXT,
    "decision" TEXT,
    "decisionSentence" TEXT,
    "subjectSocketId" TEXT,
    "socketCount" INTEGER NOT NULL DEFAULT 0,
    "lastSeenAt" DATETIME,
    "staleOn" DATETIME,
    "derivedAt" DATETIME,
    CONSTRAINT "Episode_wearerId_fkey" FOREIGN KEY ("wearerId") REFERENCES "Wearer" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "LimbMeasurement" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "method" TEXT NOT NULL,
    "linerOn" BOOLEAN,
    "minutesSinceDoffing" REAL,
    "stations" JSONB NOT NULL,
    "capHeightMm" REAL,
    "limbLengthMm" REAL,
    "note" TEXT,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    CONSTRAINT "LimbMeasurement_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "CheckSocket" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "number" INTEGER NOT NULL,
    "derivedFromId" TEXT,
    "limbMeasurementId" TEXT,
    "stations" JSONB NOT NULL,
    "lengthMm" REAL,
    "material" TEXT,
    "wallMm" REAL,
    "suspension" TEXT,
    "trimLines" TEXT,
    "benchNote" TEXT,
    "neededOn" TEXT,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "stateSince" DATETIME NOT NULL,
    "specifiedById" TEXT NOT NULL,
    "specifiedByName" TEXT NOT NULL,
    "specifiedAt" DATETIME NOT NULL,
    "version" INTEGER NOT NULL DEFAULT 1,
    CONSTRAINT "CheckSocket_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "CheckSocket_derivedFromId_fkey" FOREIGN KEY ("derivedFromId") REFERENCES "CheckSocket" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "CheckSocket_limbMeasurementId_fkey" FOREIGN KEY ("limbMeasurementId") REFERENCES "LimbMeasurement" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SocketStateChange" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "socketId" TEXT NOT NULL,
    "state" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "note" TEXT,
    "recordedAt" DATETIME NOT NULL,
    CONSTRAINT "SocketStateChange_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "CheckSocket" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Adjustment" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "socketId" TEXT,
    "carriedFromId" TEXT,
    "position" INTEGER NOT NULL,
    "aspect" TEXT,
    "third" TEXT,
    "kind" TEXT NOT NULL,
    "amount" REAL,
    "unit" TEXT,
    "reason" TEXT NOT NULL,
    "answers" TEXT,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "droppedAt" DATETIME,
    "droppedById" TEXT,
    "droppedWhy" TEXT,
    CONSTRAINT "Adjustment_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "Adjustment_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "CheckSocket" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "Adjustment_carriedFromId_fkey" FOREIGN KEY ("carriedFromId") REFERENCES "CheckSocket" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Fitting" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "socketId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "place" TEXT NOT NULL,
    "whoWasThere" TEXT,
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
    CONSTRAINT "Fitting_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "CheckSocket" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "WearTrial" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "socketId" TEXT NOT NULL,
    "minutes" REAL NOT NULL,
    "loadKg" REAL,
    "loadDistanceMm" REAL,
    "intervalMin" REAL NOT NULL,
    "activities" JSONB NOT NULL,
    "watchedBy" TEXT,
    "enteredAfterwards" BOOLEAN NOT NULL DEFAULT false,
    "plannedById" TEXT NOT NULL,
    "plannedByName" TEXT NOT NULL,
    "plannedAt" DATETIME NOT NULL,
    "state" TEXT NOT NULL DEFAULT 'planned',
    "verdict" TEXT,
    CONSTRAINT "WearTrial_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "WearTrial_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "CheckSocket" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "TrialEvent" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trialId" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "kind" TEXT NOT NULL,
    "comfort" REAL,
    "pain" REAL,
    "exertion" REAL,
    "feelings" JSONB,
    "sign" TEXT,
    "corrects" TEXT,
    "note" TEXT,
    "reportedBy" TEXT,
    "recordedById" TEXT NOT NULL,
    "receivedAt" DATETIME NOT NULL,
    CONSTRAINT "TrialEvent_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "WearTrial" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SkinInspection" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "fittingId" TEXT,
    "trialId" TEXT,
    "at" DATETIME NOT NULL,
    "minutesAfterDoffing" REAL NOT NULL,
    "note" TEXT,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    CONSTRAINT "SkinInspection_fittingId_fkey" FOREIGN KEY ("fittingId") REFERENCES "Fitting" ("id") ON DELETE SET NULL ON UPDATE CASCADE,
    CONSTRAINT "SkinInspection_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "WearTrial" ("id") ON DELETE SET NULL ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SkinMark" (
    "rowId" TEXT NOT NULL PRIMARY KEY,
    "inspectionId" TEXT NOT NULL,
    "markId" TEXT NOT NULL,
    "position" INTEGER NOT NULL,
    "distanceFromEndMm" REAL NOT NULL,
    "angleDeg" REAL NOT NULL,
    "widthMm" REAL NOT NULL,
    "heightMm" REAL NOT NULL,
    "strength" TEXT NOT NULL,
    "blanches" TEXT NOT NULL,
    "firm" BOOLEAN NOT NULL,
    "warm" BOOLEAN NOT NULL,
    "painful" BOOLEAN NOT NULL,
    "broken" BOOLEAN NOT NULL,
    "fadedAtMin" REAL,
    CONSTRAINT "SkinMark_inspectionId_fkey" FOREIGN KEY ("inspectionId") REFERENCES "SkinInspection" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "GateAcceptance" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "episodeId" TEXT NOT NULL,
    "socketId" TEXT NOT NULL,
    "signOffId" TEXT NOT NULL,
    "gate" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "GateAcceptance_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "GateAcceptance_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "CheckSocket" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "GateAcceptance_signOffId_fkey" FOREIGN KEY ("signOffId") REFERENCES "SignOff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "SignOff" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "episodeId" TEXT NOT NULL,
    "socketId" TEXT NOT NULL,
    "meaning" TEXT NOT NULL,
    "statement" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "credentialsLine" TEXT,
    "at" DATETIME NOT NULL,
    "timeZone" TEXT NOT NULL,
    "rulesVersion" TEXT NOT NULL,
    "evidence" TEXT NOT NULL,
    "digest" TEXT NOT NULL,
    "previousDigest" TEXT NOT NULL,
    CONSTRAINT "SignOff_episodeId_fkey" FOREIGN KEY ("episodeId") REFERENCES "Episode" ("id") ON DELETE RESTRICT ON UPDATE CASCADE,
    CONSTRAINT "SignOff_socketId_fkey" FOREIGN KEY ("socketId") REFERENCES "CheckSocket" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Withdrawal" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "signOffId" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "why" TEXT NOT NULL,
    CONSTRAINT "Withdrawal_signOffId_fkey" FOREIGN KEY ("signOffId") REFERENCES "SignOff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "Limit" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "name" TEXT NOT NULL,
    "value" REAL NOT NULL,
    "unit" TEXT NOT NULL,
    "low" REAL NOT NULL,
    "high" REAL NOT NULL,
    "source" TEXT NOT NULL,
    "levels" TEXT,
    "why" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    "version" INTEGER NOT NULL
);

-- CreateTable
CREATE TABLE "TrailEntry" (
    "position" INTEGER NOT NULL PRIMARY KEY AUTOINCREMENT,
    "at" DATETIME NOT NULL,
    "actorId" TEXT NOT NULL,
    "actorName" TEXT NOT NULL,
    "actorRole" TEXT NOT NULL,
    "action" TEXT NOT NULL,
    "recordKind" TEXT NOT NULL,
    "recordId" TEXT NOT NULL,
    "wearerId" TEXT,
    "episodeId" TEXT,
    "before" TEXT,
    "after" TEXT,
    "previousDigest" TEXT NOT NULL,
    "digest" TEXT NOT NULL
);

-- CreateIndex
CREATE UNIQUE INDEX "User_email_key" ON "User"("email");

-- CreateIndex
CREATE UNIQUE INDEX "Session_token_key" ON "Session"("token");

-- CreateIndex
CREATE INDEX "Session_userId_idx" ON "Session"("userId");

-- CreateIndex
CREATE INDEX "Credential_userId_idx" ON "Credential"("userId");

-- CreateIndex
CREATE INDEX "Verification_identifier_idx" ON "Verification"("identifier");

-- CreateIndex
CREATE UNIQUE INDEX "Wearer_clinicNumber_key" ON "Wearer"("clinicNumber");

-- CreateIndex
CREATE INDEX "Wearer_name_idx" ON "Wearer"("name");

-- CreateIndex
CREATE INDEX "Caution_wearerId_idx" ON "Caution"("wearerId");

-- CreateIndex
CREATE INDEX "CautionAcknowledgement_episodeId_idx" ON "CautionAcknowledgement"("episodeId");

-- CreateIndex
CREATE UNIQUE INDEX "CautionAcknowledgement_cautionId_episodeId_key" ON "CautionAcknowledgement"("cautionId", "episodeId");

-- CreateIndex
CREATE INDEX "Episode_wearerId_idx" ON "Episode"("wearerId");

-- CreateIndex
CREATE INDEX "Episode_stage_dueOn_idx" ON "Episode"("stage", "dueOn");

-- CreateIndex
CREATE INDEX "Episode_staleOn_idx" ON "Episode"("staleOn");

-- CreateIndex
CREATE INDEX "LimbMeasurement_episodeId_at_idx" ON "LimbMeasurement"("episodeId", "at");

-- CreateIndex
CREATE INDEX "CheckSocket_state_stateSince_idx" ON "CheckSocket"("state", "stateSince");

-- CreateIndex
CREATE UNIQUE INDEX "CheckSocket_episodeId_number_key" ON "CheckSocket"("episodeId", "number");

-- CreateIndex
CREATE INDEX "SocketStateChange_socketId_at_idx" ON "SocketStateChange"("socketId", "at");

-- CreateIndex
CREATE INDEX "Adjustment_episodeId_idx" ON "Adjustment"("episodeId");

-- CreateIndex
CREATE INDEX "Adjustment_socketId_idx" ON "Adjustment"("socketId");

-- CreateIndex
CREATE INDEX "Adjustment_carriedFromId_idx" ON "Adjustment"("carriedFromId");

-- CreateIndex
CREATE INDEX "Fitting_episodeId_at_idx" ON "Fitting"("episodeId", "at");

-- CreateIndex
CREATE INDEX "Fitting_socketId_at_idx" ON "Fitting"("socketId", "at");

-- CreateIndex
CREATE INDEX "WearTrial_episodeId_idx" ON "WearTrial"("episodeId");

-- CreateIndex
CREATE INDEX "WearTrial_socketId_idx" ON "WearTrial"("socketId");

-- CreateIndex
CREATE INDEX "TrialEvent_trialId_at_idx" ON "TrialEvent"("trialId", "at");

-- CreateIndex
CREATE INDEX "SkinInspection_fittingId_idx" ON "SkinInspection"("fittingId");

-- CreateIndex
CREATE INDEX "SkinInspection_trialId_idx" ON "SkinInspection"("trialId");

-- CreateIndex
CREATE UNIQUE INDEX "SkinMark_inspectionId_markId_key" ON "SkinMark"("inspectionId", "markId");

-- CreateIndex
CREATE INDEX "GateAcceptance_episodeId_idx" ON "GateAcceptance"("episodeId");

-- CreateIndex
CREATE UNIQUE INDEX "SignOff_position_key" ON "SignOff"("position");

-- CreateIndex
CREATE INDEX "SignOff_episodeId_idx" ON "SignOff"("episodeId");

-- CreateIndex
CREATE UNIQUE INDEX "Withdrawal_signOffId_key" ON "Withdrawal"("signOffId");

-- CreateIndex
CREATE UNIQUE INDEX "Limit_name_version_key" ON "Limit"("name", "version");

-- CreateIndex
CREATE INDEX "TrailEntry_recordKind_recordId_idx" ON "TrailEntry"("recordKind", "recordId");

-- CreateIndex
CREATE INDEX "TrailEntry_wearerId_at_idx" ON "TrailEntry"("wearerId", "at");

-- CreateIndex
CREATE INDEX "TrailEntry_actorId_at_idx" ON "TrailEntry"("actorId", "at");
