/**
 * The time of a trial, as right as a device can tell it.
 *
 * While the page is open, time that passes is taken from a clock that nobody can set. The clock on the wall tells only how
 * long the page was asleep or closed; the server's clock, when it can be asked, puts both right.
 */
export interface Clocks {
  /** Milliseconds since 1970, as the device believes. */
  wall: () => number;
  /** Milliseconds since the page opened; it never jumps, and may stand still while the device sleeps. */
  steady: () => number;
}

export interface KeptClock {
  /** What has to be added to the device's clock to get the server's. */
  offsetMs: number;
  /** The latest time that was shown or recorded: a page that opens again goes on from there, never before. */
  lastMs: number;
  /** By how much the server has put this clock right so far, in all. */
  correctedMs: number;
}

/** Less than this is how clocks run, not a change. */
const jitterMs = 2_000;

export class TrialClock {
  #offsetMs: number;
  #correctedMs: number;
  #base: { at: number; steady: number };

  constructor(
    private readonly clocks: Clocks,
    kept?: KeptClock,
  ) {
    this.#offsetMs = kept?.offsetMs ?? 0;
    this.#correctedMs = kept?.correctedMs ?? 0;
    const believed = clocks.wall() + this.#offsetMs;
    const at = Math.max(believed, kept?.lastMs ?? 0);
    this.#base = { at, steady: clocks.steady() };
    // The device's clock went back while the page was closed.
    if (at > believed) this.#offsetMs += at - believed;
  }

  now(): number {
    return this.#base.at + this.clocks.steady() - this.#base.steady;
  }

  /** What was pressed is never later than now, whatever the clocks do. */
  notBefore(ms: number): void {
    const behindMs = ms - this.now();
    if (!(behindMs > 0)) return;
    this.#base = { at: ms, steady: this.clocks.steady() };
    this.#offsetMs += behindMs;
  }

  kept(): KeptClock {
    return { offsetMs: this.#offsetMs, lastMs: this.now(), correctedMs: this.#correctedMs };
  }

  get correctedMs(): number {
    return this.#correctedMs;
  }

  /** What the clock would show now, had it not been put right since: what it showed then and shows now are one scale. */
  nowAsOf(correctedMs: number): number {
    return this.now() - (this.#correctedMs - correctedMs);
  }

  /**
   * Compares the two clocks of the device. Where the wall clock is ahead after the page was out of sight, the device slept
   * and the steady clock stood still: that time has passed. Otherwise somebody set the wall clock: no time has passed.
   *
   * @returns whether anything jumped, so that the server is worth asking
   */
  compare(wasOutOfSight: boolean): boolean {
    const aheadMs = this.clocks.wall() + this.#offsetMs - this.now();
    if (Math.abs(aheadMs) < jitterMs) return false;
    if (aheadMs > 0 && wasOutOfSight) this.#base = { at: this.now() + aheadMs, steady: this.clocks.steady() };
    else this.#offsetMs -= aheadMs;
    return true;
  }

  /** Takes over the server's time, which was true at some moment between asking and hearing. */
  putRight(serverMs: number, askedSteady: number): void {
    const heard = this.clocks.steady();
    const roundTripMs = heard - askedSteady;
    const at = serverMs + roundTripMs / 2;
    const byMs = at - this.now();
    if (Math.abs(byMs) < roundTripMs / 2 + 1_000) return;
    this.#correctedMs += byMs;
    this.#base = { at, steady: heard };
    this.#offsetMs = at - this.clocks.wall();
  }

  /** For the moment of asking. */
  steady(): number {
    return this.clocks.steady();
  }
}
