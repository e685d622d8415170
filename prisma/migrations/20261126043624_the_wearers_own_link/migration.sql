-- AlterTable
ALTER TABLE "Clinic" ADD COLUMN "phone" TEXT;

-- CreateTable
CREATE TABLE "WearerLink" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "trialId" TEXT NOT NULL,
    "tokenDigest" TEXT NOT NULL,
    "madeById" TEXT NOT NULL,
    "madeByName" TEXT NOT NULL,
    "madeAt" DATETIME NOT NULL,
    "expiresAt" DATETIME NOT NULL,
    "withdrawnAt" DATETIME,
    "withdrawnByName" TEXT,
    "failures" INTEGER NOT NULL DEFAULT 0,
    CONSTRAINT "WearerLink_trialId_fkey" FOREIGN KEY ("trialId") REFERENCES "WearTrial" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "WearerPass" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "linkId" TEXT NOT NULL,
    "secretDigest" TEXT NOT NULL,
    "openedAt" DATETIME NOT NULL,
    CONSTRAINT "WearerPass_linkId_fkey" FOREIGN KEY ("linkId") REFERENCES "WearerLink" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "WearerLink_tokenDigest_key" ON "WearerLink"("tokenDigest");

-- CreateIndex
CREATE INDEX "WearerLink_trialId_madeAt_idx" ON "WearerLink"("trialId", "madeAt");

-- CreateIndex
CREATE UNIQUE INDEX "WearerPass_secretDigest_key" ON "WearerPass"("secretDigest");

-- CreateIndex
CREATE INDEX "WearerPass_linkId_idx" ON "WearerPass"("linkId");
