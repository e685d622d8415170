-- CreateTable
CREATE TABLE "WearPlan" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "position" INTEGER NOT NULL,
    "signOffId" TEXT NOT NULL,
    "startOn" TEXT NOT NULL,
    "steps" JSONB NOT NULL,
    "words" TEXT,
    "call" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "WearPlan_signOffId_fkey" FOREIGN KEY ("signOffId") REFERENCES "SignOff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "MadeCheck" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "signOffId" TEXT NOT NULL,
    "method" TEXT NOT NULL,
    "stations" JSONB NOT NULL,
    "state" TEXT NOT NULL,
    "why" TEXT NOT NULL,
    "note" TEXT,
    "at" DATETIME NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "recordedAt" DATETIME NOT NULL,
    CONSTRAINT "MadeCheck_signOffId_fkey" FOREIGN KEY ("signOffId") REFERENCES "SignOff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "WearPlan_signOffId_position_key" ON "WearPlan"("signOffId", "position");

-- CreateIndex
CREATE INDEX "MadeCheck_signOffId_idx" ON "MadeCheck"("signOffId");
