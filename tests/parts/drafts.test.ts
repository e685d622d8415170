import { describe, expect, test } from "vitest";
import { type Draft, draftKey, keptWhen, laidOver, nameInStore, readDraft, writeDraft } from "@/app/_parts/draft-record";
import {
  draftsBy,
  dropDraft,
  dropDraftsBy,
  dropOldDrafts,
  keepDraft,
  loadDraft,
  newUuid,
  type TextStore,
} from "@/app/_parts/draft-store";
import { TypedValues } from "@/app/_parts/typed-values";

const now = Date.UTC(2026, 9, 5, 10, 42);
const day = 24 * 60 * 60 * 1000;
const draft = (change: Partial<Draft> = {}): Draft => ({
  values: { id: "r1", "checks.donning": "met", cautions: ["a", "b"] },
  keptAt: now,
  tab: "tab-1",
  path: "/sockets/s1/fitting",
  title: "Fitting of socket 3",
  ...change,
});
const mine = draftKey("fitting", "s1", "account-1");
const theirs = draftKey("fitting", "s1", "account-2");

/** As much of a browser's Storage as is used. */
function store(refusal?: Error): TextStore & { texts: Map<string, string> } {
  const texts = new Map<string, string>();
  return {
    texts,
    get length() {
      return texts.size;
    },
    key: (position) => [...texts.keys()][position] ?? null,
    getItem: (name) => texts.get(name) ?? null,
    removeItem: (name) => void texts.delete(name),
    setItem: (name, text) => {
      if (refusal) throw refusal;
      texts.set(name, text);
    },
  };
}

describe("a draft on the device", () => {
  test("comes back as it was kept, with the id of the record that it makes", () => {
    const device = store();
    expect(keepDraft(device, mine, draft())).toBeUndefined();
    expect(loadDraft(device, mine, now)).toEqual(draft());
  });

  test("is not found by another account at the same form", () => {
    const device = store();
    keepDraft(device, mine, draft());
    expect(loadDraft(device, theirs, now)).toBeUndefined();
    expect(draftsBy(device, "account-2", now)).toEqual([]);
  });

  test("is dropped after 7 days, and not before", () => {
    const device = store();
    keepDraft(device, mine, draft({ keptAt: now - 7 * day }));
    keepDraft(device, theirs, draft({ keptAt: now - 7 * day - 1 }));
    expect(loadDraft(device, theirs, now)).toBeUndefined();
    dropOldDrafts(device, now);
    expect([...device.texts.keys()]).toEqual([nameInStore(mine)]);
  });

  test("what cannot be read is dropped, and what is not ours stays", () => {
    const device = store();
    device.texts.set(nameInStore(mine), "{");
    device.texts.set(nameInStore(theirs), JSON.stringify({ version: 2, values: {} }));
    device.texts.set("theme", "dark");
    dropOldDrafts(device, now);
    expect([...device.texts.keys()]).toEqual(["theme"]);
  });

  test.each([
    ["no text", null],
    ["no JSON", "fitting"],
    ["null", "null"],
    ["a value that is no text", writeDraft(draft()).replace('"met"', "7")],
    ["a list of something else", writeDraft(draft()).replace('"b"', "{}")],
    ["no time", writeDraft(draft()).replace(String(now), '"today"')],
    ["a time to come", writeDraft(draft({ keptAt: now + 2 * day }))],
  ])("%s is no draft", (_, text) => {
    expect(readDraft(text, now)).toBeUndefined();
  });

  test("signing out takes those of the account and leaves the others", () => {
    const device = store();
    keepDraft(device, mine, draft());
    keepDraft(device, draftKey("measurement", "e1", "account-1"), draft({ keptAt: now - 1, title: "Measure the limb" }));
    keepDraft(device, theirs, draft());
    expect(draftsBy(device, "account-1", now).map(({ title }) => title)).toEqual(["Fitting of socket 3", "Measure the limb"]);
    dropDraftsBy(device, "account-1");
    expect([...device.texts.keys()]).toEqual([nameInStore(theirs)]);
  });

  test("a save forgets its own draft only", () => {
    const device = store();
    keepDraft(device, mine, draft());
    keepDraft(device, theirs, draft());
    dropDraft(device, mine);
    expect([...device.texts.keys()]).toEqual([nameInStore(theirs)]);
  });

  test("a full store, a forbidden one and none at all are told apart, and nothing throws", () => {
    expect(keepDraft(store(new DOMException("", "QuotaExceededError")), mine, draft())).toBe("full");
    expect(keepDraft(store(new DOMException("", "SecurityError")), mine, draft())).toBe("forbidden");
    expect(keepDraft(undefined, mine, draft())).toBe("forbidden");
    expect(loadDraft(undefined, mine, now)).toBeUndefined();
    expect(draftsBy(undefined, "account-1", now)).toEqual([]);
    expect(() => dropOldDrafts(undefined, now)).not.toThrow();
  });
});

describe("what was typed while the page’s scripts were on their way", () => {
  test("is laid over the draft, field by field", () => {
    const kept = { id: "draft", note: "kept", comfort: "7", "look.noMarks": "yes" };
    const typed = { id: "page", note: "typed since", comfort: "" };
    expect(laidOver(kept, typed, ["note"])).toEqual({ ...kept, note: "typed since" });
  });

  test("a box that was unticked stays unticked", () => {
    expect(laidOver({ id: "draft", "look.noMarks": "yes" }, { id: "page" }, ["look.noMarks"])).toEqual({ id: "draft" });
  });
});

describe("what stands in the fields", () => {
  test("is told to those who follow it only where it changed", () => {
    const typed = new TypedValues();
    const seen: unknown[] = [];
    const stop = typed.subscribe(() => seen.push(typed.now()));
    expect(typed.set({ note: "a" })).toBe(true);
    expect(typed.set({ note: "a" })).toBe(false);
    expect(typed.set({ note: ["a"] })).toBe(true);
    expect(typed.set({ other: "a" })).toBe(true);
    stop();
    typed.set({ note: "b" });
    expect(seen).toEqual([{ note: "a" }, { note: ["a"] }, { other: "a" }]);
  });
});

test("the line says the time, and the day where it was another one", () => {
  const at = new Date(2026, 9, 5, 9, 7).getTime();
  expect(keptWhen(at, new Date(2026, 9, 5, 23, 0).getTime())).toBe("09:07");
  expect(keptWhen(at, new Date(2026, 9, 6, 1, 0).getTime())).toBe("09:07 on 5 October");
});

test("an id made on the device is a UUID of version 4, as RFC 9562 has it", () => {
  const made = Array.from({ length: 200 }, newUuid);
  for (const id of made) expect(id).toMatch(/^[0-9a-f]{8}-[0-9a-f]{4}-4[0-9a-f]{3}-[89ab][0-9a-f]{3}-[0-9a-f]{12}$/);
  expect(new Set(made).size).toBe(200);
});
