/** One trial on one device: what is pressed is kept, shown, sent and merged with what others recorded. */
import { newUuid } from "@/app/_parts/draft-store";
import type { TrialEvent } from "@/lib/fit/bundle";
import { type Clocks, TrialClock } from "./clock";
import type { Became, LiveTrial, SentLook } from "./live-trial";
import { type SendState, sendAll } from "./outbox";
import { fetchTrial, hearChanges, sendEvents, sendLook } from "./server";
import { type DeviceStore, forgetOld, itemsOf, type KeptItem, keepItem, markItems } from "./store";

type OfKind<Kind> = Kind extends { kind: string } ? Omit<Kind, "id" | "at"> : never;
/** An event before it has its id and its time. */
export type Pressed = OfKind<TrialEvent>;

export interface Shown {
  trial: LiveTrial | null;
  items: readonly KeptItem[];
  /** Ids of what is not on the device's disk: being written, or refused by the device. */
  unkept: ReadonlySet<string>;
  /** Why the device keeps nothing more. */
  notKept: "full" | "forbidden" | null;
  line: SendState | "sending";
  /** The clinic is heard: a stop that is said there ends the trial here. */
  isHeard: boolean;
  /** Where there is no trial to show. */
  failed: { failed: "offline" | "signed out" | "refused"; why: string } | null;
}

const sendAgainMs = 5_000;
const keepClockMs = 10_000;

export class TrialOnDevice {
  #shown: Shown = { trial: null, items: [], unkept: new Set(), notKept: null, line: "all sent", isHeard: true, failed: null };
  readonly #listeners = new Set<() => void>();
  readonly #ends = new AbortController();
  readonly #others = typeof BroadcastChannel === "undefined" ? undefined : new BroadcastChannel("fitting-ledger-live");
  #isSending = false;
  #wasOutOfSight = false;

  private constructor(
    private readonly db: DeviceStore | null,
    readonly clock: TrialClock,
    private readonly trialId: string,
    private readonly pass: string | undefined,
  ) {}

  /** Shows at once what the device has, then what the server has, and goes on hearing. */
  static async open(
    db: DeviceStore | null,
    { trialId, pass, clocks }: { trialId: string; pass?: string | undefined; clocks: Clocks },
  ): Promise<TrialOnDevice> {
    const kept = await db?.get("clock", "clock");
    const device = new TrialOnDevice(db, new TrialClock(clocks, kept), trialId, pass);
    if (!db) device.#show({ notKept: "forbidden" });
    await device.#readDevice();
    device.clock.notBefore(device.#lastPressedMs());
    device.#start();
    return device;
  }

  readonly shown = (): Shown => this.#shown;

  readonly subscribe = (listener: () => void): (() => void) => {
    this.#listeners.add(listener);
    return () => void this.#listeners.delete(listener);
  };

  close(): void {
    this.#ends.abort();
    this.#others?.close();
  }

  /** Shown at once; on the device's disk a moment later; sent when it can be. @returns whether it is on the disk */
  press(pressed: Pressed): Promise<boolean> {
    const event = { ...pressed, id: newUuid(), at: this.#nextInstant() } as TrialEvent; // a kind without id and time, with both
    return this.#keep({ ...this.#newItem(event.id), what: "event", event });
  }

  look(look: Omit<SentLook, "id" | "at">): Promise<boolean> {
    const id = newUuid();
    return this.#keep({ ...this.#newItem(id), what: "look", look: { ...look, id, at: this.#nextInstant() } });
  }

  /** After the page was out of sight, and every second. */
  tick(): void {
    const jumped = this.clock.compare(this.#wasOutOfSight);
    this.#wasOutOfSight = document.visibilityState === "hidden";
    if (jumped) void this.refresh();
  }

  async refresh(): Promise<void> {
    const asked = this.clock.steady();
    const told = await fetchTrial(this.trialId, this.pass);
    if (this.#ends.signal.aborted) return;
    if ("failed" in told) {
      this.#show({ failed: told, line: told.failed });
      return;
    }
    this.clock.putRight(Date.parse(told.answer.serverNow), asked);
    void this.#keepClock();
    this.#show({ trial: told.answer, failed: null, ...(this.#isSending ? {} : { line: "all sent" as const }) });
    try {
      const kept = { ...told.answer, keptAt: Date.now(), ...(this.pass === undefined ? {} : { pass: this.pass }) };
      await this.db?.put("trials", kept);
      if (this.db && this.#shown.unkept.size === 0) this.#show({ notKept: null });
    } catch {
      this.#show({ notKept: "full" });
    }
    void this.send();
  }

  async send(): Promise<void> {
    const waiting = this.#shown.items.filter(({ state }) => state === "to send");
    if (this.#isSending || waiting.length === 0) return;
    this.#isSending = true;
    this.#show({ line: "sending" });
    try {
      const line = await sendAll({
        items: waiting,
        send: (items) => this.#sendBatch(items),
        heard: (answers) => this.#heard(answers),
      });
      this.#show({ line });
      if (line === "all sent") void this.refresh();
    } finally {
      this.#isSending = false;
    }
  }

  #sendBatch(items: readonly KeptItem[]) {
    const [first] = items;
    // The server puts their times right by this: it is said by the clock that gave them.
    const sentAt = instant(this.clock.nowAsOf(first?.correctedMs ?? 0));
    if (first?.what === "look") return sendLook(this.trialId, this.pass, { sentAt, look: first.look });
    return sendEvents(this.trialId, this.pass, {
      sentAt,
      events: items.flatMap((item) => (item.what === "event" ? [item.event] : [])),
    });
  }

  async #heard(answers: readonly Became[]): Promise<void> {
    const by = new Map(answers.map((answer) => [answer.id, answer]));
    this.#show({
      items: this.#shown.items.map((item) => {
        const answer = by.get(item.id);
        if (!answer) return item;
        const state = answer.became === "set aside" ? "set aside" : "sent";
        return { ...item, state, ...(answer.why === undefined ? {} : { why: answer.why }) };
      }),
    });
    try {
      if (this.db) await markItems(this.db, answers);
    } catch {
      // It is sent once more after the next opening, and known there.
    }
    this.#tellOthers();
  }

  async #keep(item: KeptItem): Promise<boolean> {
    this.#show({ items: [...this.#shown.items, item], unkept: new Set([...this.#shown.unkept, item.id]) });
    const isKept = await this.#write(item);
    void this.send();
    return isKept;
  }

  async #write(item: KeptItem): Promise<boolean> {
    try {
      if (!this.db) throw new DOMException("no store", "SecurityError");
      await keepItem(this.db, item);
    } catch {
      this.#show({ notKept: this.db ? "full" : "forbidden" });
      return false;
    }
    const unkept = new Set(this.#shown.unkept);
    unkept.delete(item.id);
    this.#show({ unkept, ...(unkept.size === 0 ? { notKept: null } : {}) });
    void this.#keepClock();
    this.#tellOthers();
    return true;
  }

  /** What the device had no room for is tried again, as long as the page is open. */
  async #writeAgain(): Promise<void> {
    if (!this.#shown.notKept || !this.db) return;
    for (const item of this.#shown.items) if (this.#shown.unkept.has(item.id) && !(await this.#write(item))) return;
  }

  /** Asked before the page is left: something is neither on the disk nor with the server. */
  #isOnlyHere(): boolean {
    return this.#shown.items.some(({ id, state }) => state === "to send" && this.#shown.unkept.has(id));
  }

  #newItem(id: string) {
    const order = Math.max(0, ...this.#shown.items.map((item) => item.order)) + 1;
    return { id, trialId: this.trialId, order, correctedMs: this.clock.correctedMs, state: "to send" as const };
  }

  /** Never before what was pressed earlier, whatever the clocks do. */
  #nextInstant(): string {
    return instant(Math.max(this.clock.now(), this.#lastPressedMs() + 1));
  }

  /** By the clock as it stands now: what was pressed before it was put right moves with it. */
  #lastPressedMs(): number {
    return Math.max(
      0,
      ...this.#shown.items.map(
        (item) => Date.parse(item.what === "event" ? item.event.at : item.look.at) + this.clock.correctedMs - item.correctedMs,
      ),
    );
  }

  async #readDevice(): Promise<void> {
    if (!this.db) return;
    const [trial, items] = await Promise.all([this.db.get("trials", this.trialId), itemsOf(this.db, this.trialId)]);
    const kept = new Set(items.map(({ id }) => id));
    const unkept = this.#shown.items.filter(({ id }) => this.#shown.unkept.has(id) && !kept.has(id));
    this.#show({ items: [...items, ...unkept], ...(trial && !this.#shown.trial ? { trial } : {}) });
  }

  #start(): void {
    const { signal } = this.#ends;
    void this.refresh();
    void hearChanges(this.trialId, {
      pass: this.pass,
      signal,
      changed: () => void this.refresh(),
      hears: (isHeard) => this.#show({ isHeard }),
    });
    const again = setInterval(() => {
      void this.#writeAgain();
      void this.send();
    }, sendAgainMs);
    window.addEventListener("beforeunload", (event) => this.#isOnlyHere() && event.preventDefault(), { signal });
    const clock = setInterval(() => void this.#keepClock(), keepClockMs);
    window.addEventListener("online", () => void this.refresh(), { signal });
    document.addEventListener(
      "visibilitychange",
      () => {
        if (document.visibilityState === "hidden") this.#wasOutOfSight = true;
        else this.tick();
      },
      { signal },
    );
    this.#others?.addEventListener("message", ({ data }) => data === this.trialId && void this.#readDevice(), { signal });
    signal.addEventListener("abort", () => {
      clearInterval(again);
      clearInterval(clock);
    });
    if (this.db) void forgetOld(this.db, Date.now()).catch(() => undefined);
  }

  async #keepClock(): Promise<void> {
    await this.db?.put("clock", this.clock.kept(), "clock").catch(() => undefined);
  }

  /** Other tabs of this device that have the trial open. */
  #tellOthers(): void {
    this.#others?.postMessage(this.trialId);
  }

  #show(change: Partial<Shown>): void {
    this.#shown = { ...this.#shown, ...change };
    for (const listener of this.#listeners) listener();
  }
}

const instant = (ms: number): string => new Date(ms).toISOString();
