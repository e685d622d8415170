/** What happens in one wearer's story, step by step: each step is a command with its time. */
import type { Actor } from "@/lib/access/actor";
import type { Who } from "./accounts";
import type { Calendar, When } from "./calendar";
import type { EpisodeOnPaper } from "./episode-on-paper";
import { stableId } from "./stable-id";

/** Everyone who works here, by what they are to the stories. */
export type Cast = Record<Who, Actor>;

export interface Step {
  at: Date;
  what: string;
  run: (cast: Cast) => Promise<unknown>;
}

export class Timeline {
  readonly steps: Step[] = [];
  /** The same, as the bundles that come of it. */
  readonly episodes: EpisodeOnPaper[] = [];
  private named = 0;

  constructor(
    /** Names the story in messages, and makes the ids of its records. */
    readonly key: string,
    readonly calendar: Calendar,
  ) {}

  /** Adds a step. In one story nothing happens before what was told before it. */
  add(when: When | Date, what: string, run: Step["run"]): void {
    const at = when instanceof Date ? when : this.calendar.instant(when);
    const before = this.steps.at(-1);
    if (before && at < before.at)
      throw new RangeError(
        `${this.key}: "${what}" at ${at.toISOString()} is told after "${before.what}" at ${before.at.toISOString()}`,
      );
    this.steps.push({ at, what, run });
  }

  /** An id that is the same at every load. */
  newId(what: string): string {
    this.named += 1;
    return stableId(`${this.key}: ${what} ${this.named}`);
  }
}
