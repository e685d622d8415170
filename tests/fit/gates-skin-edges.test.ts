/** The gates about the skin at their edges, and what they say: the state, the number, the limit, the source, the sentence. */
import { describe, expect, it } from "vitest";
import type { Bundle, SkinMark } from "@/lib/fit";
import { longestFadeMin } from "@/lib/fit/gates-skin";
import { trackMarks } from "@/lib/fit/skin-marks-track";
import { gone, look, mark } from "./marks";
import { changed, fittingOf, gateOf, readyBundle, trialOf } from "./ready-bundle";

/** The ready bundle with these looks at the skin after its trial. */
const looks = (...after: ReturnType<typeof look>[]): Bundle =>
  changed((bundle) => {
    trialOf(bundle).inspections = after;
  });
const nobodyLooked = looks();
const fourMarks = (each: Partial<SkinMark>) =>
  [0, 90, 180, 270].map((angleDeg) => mark({ id: `m${angleDeg}`, angleDeg, ...each }));

// Fading within 20 minutes: clinic leaflets, common practice, no source. First look within 5 minutes: clinic setting.
describe("skin-inspected", () => {
  const asked = { unit: "min", limit: 5, source: "clinic-setting", limitText: expect.stringMatching(/5 min .* 20 min/) };

  it("reads out how many looks there were, the first and the last of them", () => {
    expect(gateOf(readyBundle(), "skin-inspected")).toMatchObject({ ...asked, state: "met", value: 1 });
    expect(gateOf(readyBundle(), "skin-inspected").why).toMatch(/^2 looks.* 1 .* 8 min/);
    expect(gateOf(looks(look(5)), "skin-inspected").why).toMatch(/^1 look,.* 5 .* 5 min/);
  });

  it("is met by a first look at 5 minutes, and unknown just after", () => {
    expect(gateOf(looks(look(5)), "skin-inspected")).toMatchObject({ ...asked, state: "met", value: 5 });
    const late = gateOf(looks(look(5.1)), "skin-inspected");
    expect(late).toMatchObject({ ...asked, state: "unknown", value: 5.1, why: expect.stringContaining("5.1 min") });
  });

  it("asks for one look more where a mark was not seen gone, and says since when", () => {
    const open = gateOf(looks(look(2, ...fourMarks({})), look(12, ...fourMarks({}).slice(1))), "skin-inspected");
    expect(open).toMatchObject({ ...asked, state: "unknown", value: 2 });
    expect(open.why).toMatch(/^4 marks not seen gone, .*12 min/);
    expect(gateOf(looks(look(2, mark())), "skin-inspected").why).toMatch(/^1 mark not seen gone/);
  });

  it("is unknown up to the last moment before 20 minutes, and met from there on", () => {
    expect(gateOf(looks(look(2, mark()), look(19.9, mark())), "skin-inspected").state).toBe("unknown");
    expect(gateOf(looks(look(2, mark()), look(20, mark())), "skin-inspected").state).toBe("met");
  });

  it("counts a mark as gone only by a look after the last one that shows it", () => {
    expect(gateOf(looks(look(2, mark()), look(9, gone())), "skin-inspected").state).toBe("met");
    expect(gateOf(looks(look(2, gone()), look(9, mark())), "skin-inspected").state).toBe("unknown");
    // Two looks at one minute that contradict each other: the mark was there.
    const both = looks({ ...look(3, gone()), id: "a" }, { ...look(3, mark()), id: "b" });
    expect(gateOf(both, "skin-inspected").state).toBe("unknown");
  });

  it("asks nothing more where a mark is mentioned only to say that it is not there", () => {
    for (const minutes of [0, 2]) expect(gateOf(looks(look(minutes, gone())), "skin-inspected").state).toBe("met");
  });

  it("is unknown where nobody looked, whatever the limit is", () => {
    const none = gateOf(nobodyLooked, "skin-inspected");
    expect(none).toMatchObject({ ...asked, state: "unknown", why: expect.stringMatching(/nobody looked/i) });
    expect(none.value).toBeUndefined();
  });
});

// NPIAP 2016: purple is suspected deep-tissue injury; persistent redness that does not blanch is a stage 1 pressure injury.
describe("skin-intact", () => {
  const asked = { unit: "marks", limit: 0, source: "npiap-2016", limitText: expect.stringContaining("20 min") };

  it("says at how many looks nothing was hurt, those of the fitting among them", () => {
    expect(gateOf(readyBundle(), "skin-intact")).toMatchObject({
      ...asked,
      state: "met",
      value: 0,
      why: expect.stringMatching(/at 2 looks/),
    });
    const fitted = changed((bundle) => void fittingOf(bundle).inspections.push(look(3)));
    expect(gateOf(fitted, "skin-intact").why).toMatch(/at 3 looks/);
  });

  it.each<[string, Partial<SkinMark>, RegExp]>([
    ["broken skin", { broken: true }, /^Broken skin 4 min after doffing\. Call the physician/],
    ["purple skin", { strength: "purple" }, /^Purple skin 4 min after doffing\. Call the physician/],
  ])("names %s and the minute at which it was seen", (_, hurt, why) => {
    const found = gateOf(looks(look(4, mark(hurt)), look(10, gone())), "skin-intact");
    expect(found).toMatchObject({ ...asked, state: "forbids", value: 1, why: expect.stringMatching(why) });
  });

  it("counts each mark that is hurt, and names each", () => {
    const two = looks(
      look(1, mark({ id: "a", broken: true }), mark({ id: "b", strength: "purple" })),
      look(20, mark({ id: "c", blanches: "no" })),
    );
    const found = gateOf(two, "skin-intact");
    expect(found.value).toBe(3);
    expect(found.why).toMatch(/^Broken skin 1 min [^;]*; Purple skin 1 min [^;]*; A mark that does not blanch 20 min/);
  });

  it("forbids a mark that does not blanch at 20 minutes, not one just before, nor one whose blanching nobody tested", () => {
    const seen = (minutes: number, blanches: SkinMark["blanches"]) =>
      gateOf(looks(look(1), look(minutes, mark({ blanches }))), "skin-intact").state;
    expect([seen(19.9, "no"), seen(20, "no"), seen(20, "yes"), seen(20, "not tested")]).toEqual(["met", "forbids", "met", "met"]);
  });

  it("is unknown where nobody looked after the trial, though somebody did at the fitting", () => {
    const bundle = changed((changing) => {
      trialOf(changing).inspections = [];
      fittingOf(changing).inspections = [look(3)];
    });
    const found = gateOf(bundle, "skin-intact");
    expect(found).toMatchObject({ ...asked, state: "unknown", why: expect.stringMatching(/nobody looked/i) });
    expect(found.value).toBeUndefined();
  });

  it("forbids by what was seen at a fitting where there is no trial, and else is unknown", () => {
    const fitted = (each: Partial<SkinMark>) =>
      changed((bundle) => {
        bundle.wearTrials = [];
        fittingOf(bundle).inspections = [look(3, mark(each))];
      });
    expect(gateOf(fitted({ broken: true }), "skin-intact").state).toBe("forbids");
    expect(gateOf(fitted({}), "skin-intact")).toMatchObject({ state: "unknown", why: expect.stringContaining("trial") });
  });
});

describe("marks-fade", () => {
  const asked = { unit: "min", limit: 20, source: "fading-20-min", limitText: expect.stringContaining("20 min") };

  it("gives the time at which the last mark had gone", () => {
    expect(gateOf(readyBundle(), "marks-fade")).toMatchObject({ ...asked, state: "met", value: 8 });
    expect(gateOf(readyBundle(), "marks-fade").why).toMatch(/^4 marks, .* 8 min/);
    const uneven = looks(
      look(1, mark({ id: "a" }), mark({ id: "b" })),
      look(6, gone({ id: "a" }), mark({ id: "b" })),
      look(15, gone({ id: "b" })),
    );
    expect(gateOf(uneven, "marks-fade")).toMatchObject({ value: 15, why: expect.stringMatching(/^2 marks, .* 15 min/) });
  });

  it("says that there was no mark, also where one is mentioned only as not there", () => {
    const none = { ...asked, state: "met", why: expect.stringMatching(/no mark/i) };
    expect(gateOf(looks(look(2)), "marks-fade")).toMatchObject({ ...none, value: 0 });
    // Gone by the look that says so.
    expect(gateOf(looks(look(2, gone())), "marks-fade")).toMatchObject({ ...none, value: 2 });
    expect(gateOf(looks(look(2, mark({ id: "a" }), gone({ id: "b" })), look(9, gone({ id: "a" }))), "marks-fade").why).toMatch(
      /^1 mark,/,
    );
  });

  it("is not met by one mark that faded at 21 minutes, and met by one that faded at 20", () => {
    const fadedAt = (minutes: number) => looks(look(1, mark({ fadedAtMin: minutes })), look(22, gone({ fadedAtMin: minutes })));
    expect(gateOf(fadedAt(20), "marks-fade")).toMatchObject({ ...asked, state: "met", value: 20 });
    expect(gateOf(fadedAt(21), "marks-fade")).toMatchObject({
      ...asked,
      state: "not met",
      value: 21,
      why: expect.stringMatching(/^1 mark still there at 20 min/),
    });
  });

  it("has no number while one mark was not seen gone, late or not", () => {
    const late = gateOf(looks(look(1, ...fourMarks({})), look(25, ...fourMarks({}).slice(0, 2))), "marks-fade");
    expect(late).toMatchObject({ state: "not met", why: expect.stringMatching(/^2 marks still there at 20 min/) });
    expect(late.value).toBeUndefined();
    const open = gateOf(looks(look(1, ...fourMarks({}))), "marks-fade");
    expect(open).toMatchObject({ ...asked, state: "unknown", why: expect.stringMatching(/^4 marks of which nobody saw/) });
    expect(open.value).toBeUndefined();
  });

  it("is unknown where the first look came after 20 minutes, when marks may have gone, but not at 20", () => {
    expect(gateOf(looks(look(20)), "marks-fade").state).toBe("met");
    expect(gateOf(looks(look(20.5)), "marks-fade")).toMatchObject({
      ...asked,
      state: "unknown",
      why: expect.stringMatching(/first look was 20\.5 min/),
    });
  });

  it("is unknown where nobody looked, against the same limit", () => {
    expect(gateOf(nobodyLooked, "marks-fade")).toMatchObject({
      ...asked,
      state: "unknown",
      why: expect.stringMatching(/nobody looked/i),
    });
  });

  it("takes the longest of all, 0 without a mark, and none where one was not seen gone", () => {
    expect(longestFadeMin([])).toBe(0);
    expect(
      longestFadeMin(
        trackMarks([look(1, mark({ id: "a" }), mark({ id: "b" })), look(7, gone({ id: "a" })), look(11, gone({ id: "b" }))]),
      ),
    ).toBe(11);
    expect(longestFadeMin(trackMarks([look(1, mark({ id: "a" }), mark({ id: "b" })), look(7, gone({ id: "a" }))]))).toBeNull();
  });
});
