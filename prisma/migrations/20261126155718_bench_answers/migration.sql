-- CreateTable
CREATE TABLE "BenchReading" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "signOffId" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "BenchReading_signOffId_fkey" FOREIGN KEY ("signOffId") REFERENCES "SignOff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BenchQuestion" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "signOffId" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "BenchQuestion_signOffId_fkey" FOREIGN KEY ("signOffId") REFERENCES "SignOff" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateTable
CREATE TABLE "BenchAnswer" (
    "id" TEXT NOT NULL PRIMARY KEY,
    "questionId" TEXT NOT NULL,
    "words" TEXT NOT NULL,
    "byId" TEXT NOT NULL,
    "byName" TEXT NOT NULL,
    "at" DATETIME NOT NULL,
    CONSTRAINT "BenchAnswer_questionId_fkey" FOREIGN KEY ("questionId") REFERENCES "BenchQuestion" ("id") ON DELETE RESTRICT ON UPDATE CASCADE
);

-- CreateIndex
CREATE UNIQUE INDEX "BenchReading_signOffId_byId_key" ON "BenchReading"("signOffId", "byId");

-- CreateIndex
CREATE INDEX "BenchQuestion_signOffId_idx" ON "BenchQuestion"("signOffId");

-- CreateIndex
CREATE UNIQUE INDEX "BenchAnswer_questionId_key" ON "BenchAnswer"("questionId");

-- What is only ever added.
CREATE TRIGGER "BenchReading_no_update" BEFORE UPDATE ON "BenchReading"
BEGIN SELECT RAISE(ABORT, 'locked: what was read stays read'); END;
CREATE TRIGGER "BenchReading_no_delete" BEFORE DELETE ON "BenchReading"
BEGIN SELECT RAISE(ABORT, 'locked: what was read stays read'); END;
CREATE TRIGGER "BenchQuestion_no_update" BEFORE UPDATE ON "BenchQuestion"
BEGIN SELECT RAISE(ABORT, 'locked: a question stays as it was asked'); END;
CREATE TRIGGER "BenchQuestion_no_delete" BEFORE DELETE ON "BenchQuestion"
BEGIN SELECT RAISE(ABORT, 'locked: a question stays as it was asked'); END;
CREATE TRIGGER "BenchAnswer_no_update" BEFORE UPDATE ON "BenchAnswer"
BEGIN SELECT RAISE(ABORT, 'locked: an answer stays as it was given'); END;
CREATE TRIGGER "BenchAnswer_no_delete" BEFORE DELETE ON "BenchAnswer"
BEGIN SELECT RAISE(ABORT, 'locked: an answer stays as it was given'); END;
