/**
 * What can go wrong for a reason that a person can act on. Each knows what to tell that person;
 * everything else is a fault, logged under an id that the person sees.
 */
import type { Assessment } from "@/lib/fit";

export abstract class Refusal extends Error {
  /** What to tell the person. */
  get tell(): string {
    return this.message;
  }
}

export class NotAllowed extends Refusal {
  override readonly name = "NotAllowed";
  constructor(what: string, role: string) {
    super(
      role === "wearer"
        ? `This link opens one wear trial and nothing else. It may not do this: ${what}.`
        : `Your account (${role}) may not do this: ${what}.`,
    );
  }
}

export class NotFound extends Refusal {
  override readonly name = "NotFound";
  constructor(what: string) {
    super(`There is no such ${what}. It may have been struck out, or the address is wrong.`);
  }
}

/** Evidence under a signature, or a record that is finished. */
export class Locked extends Refusal {
  override readonly name = "Locked";
}

/** Someone saved the same record in between; both versions are there to choose from. */
export class ChangedMeanwhile extends Refusal {
  override readonly name = "ChangedMeanwhile";
  constructor(
    what: string,
    /** What the record holds now, by field. */
    readonly theirs: Record<string, unknown>,
    /** To be sent with the next try, once the person has seen what changed. */
    readonly version: number,
  ) {
    super(`${what} was changed by someone else while you had it open. Nothing of yours was saved yet.`);
  }
}

/** The same form was sent before, from another tab or in an earlier try, with other content. */
export class SavedOtherwise extends Refusal {
  override readonly name = "SavedOtherwise";
  constructor(byName: string) {
    super(
      `This was saved already, by ${byName}, with other content than this; another tab may have sent it. Nothing of this was saved. Open what was saved, and put it right there.`,
    );
  }
}

/** Fields that are wrong, each with what to do about it; nothing was saved. */
export class InputRefused extends Refusal {
  override readonly name = "InputRefused";
  constructor(readonly fields: Record<string, string>) {
    super(
      Object.keys(fields).length === 1
        ? "One field needs another look."
        : `${Object.keys(fields).length} fields need another look.`,
    );
  }
}

/** Values that are possible and unusual; nothing was saved yet. Sent again unchanged, they are meant so. */
export class AskedAbout extends Refusal {
  override readonly name = "AskedAbout";
  constructor(
    readonly fields: Record<string, string>,
    /** To be sent with the next try. */
    readonly asked: readonly string[],
  ) {
    super(
      Object.keys(fields).length === 1
        ? "One value is unusual. Nothing is saved yet: look again, and save once more if it is so."
        : `${Object.keys(fields).length} values are unusual. Nothing is saved yet: look again, and save once more if they are so.`,
    );
  }
}

/** The evidence does not allow this signature. */
export class NotReady extends Refusal {
  override readonly name = "NotReady";
  constructor(readonly assessment: Assessment) {
    super(assessment.sentence);
  }
}
