import { z } from "zod";
import { limitValue, madeAsSpecified } from "@/lib/fit";
import { wholeMinute } from "./believable-times";
import { command, isSavedAlready } from "./command";
import { refuseFuture } from "./episode-for-change";
import { choice, id, instant, maybeText, newRecordId, rows } from "./input";
import { limitsInForce } from "./limits-in-force";
import { StationInput } from "./measure-limb";
import { InputRefused, Locked } from "./refusals";
import { definitiveStations, standingRelease } from "./released";
import { refuseDisorder } from "./stations";

/** How the inside of a made socket can be measured. */
export const madeMethods = ["tape", "scan"] as const;

/** The definitive socket came back from the bench and was measured against its release sheet. */
export const checkMadeSocket = command({
  permission: "check a made socket",
  input: z.strictObject({
    id: newRecordId,
    signOffId: id("The release"),
    at: instant("When it was measured"),
    method: choice("how it was measured", madeMethods),
    stations: rows(StationInput).refine((stations) => stations.length >= 2, "Measure two levels or more."),
    note: maybeText("The note", 1000),
  }),
  run: async (store, { id: given, ...fields }) => {
    if (given && (await isSavedAlready(store, { kind: "made check", id: given, fields })))
      return { signOffId: fields.signOffId, madeCheckId: given };
    const { release, episode } = await standingRelease(store, fields.signOffId);
    if (episode.deliveredAt) throw new Locked("The definitive socket was delivered already.");
    refuseFuture(store, "at", fields.at);
    if (fields.at.getTime() < wholeMinute(release.at)) throw new InputRefused({ at: "This is before the release was signed." });
    refuseDisorder(fields.stations);
    const specified = definitiveStations(release.evidence);
    refuseBeyond(specified, fields.stations);
    const limits = await limitsInForce(store.db);
    const circumferenceSdMm = fields.method === "tape" ? limitValue(limits, "tape-error-mm") : 0;
    const { state, why } = madeAsSpecified(specified, fields.stations, { limits, circumferenceSdMm });
    const madeCheckId = given ?? store.newId();
    await store.db.madeCheck.create({
      data: {
        id: madeCheckId,
        signOffId: release.id,
        method: fields.method,
        stations: fields.stations,
        state,
        why,
        note: fields.note ?? null,
        at: fields.at,
        byId: store.actor.id,
        byName: store.actor.name,
        recordedAt: store.now,
      },
    });
    await store.note({
      action: "measured the definitive socket against its sheet",
      kind: "made check",
      id: madeCheckId,
      wearerId: episode.wearerId,
      episodeId: episode.id,
      after: fields,
    });
    return { signOffId: release.id, madeCheckId };
  },
});

/** A level that the sheet does not cover cannot be held against it. */
function refuseBeyond(specified: readonly { distanceMm: number }[], made: readonly { distanceMm: number }[]): void {
  const [first, last] = [specified[0]?.distanceMm, specified.at(-1)?.distanceMm];
  if (first === undefined || last === undefined)
    throw new Locked("The release sheet has no inside dimensions: there is nothing to measure against.");
  made.forEach(({ distanceMm }, index) => {
    if (distanceMm < first || distanceMm > last)
      throw new InputRefused({
        [`stations.${index}.distanceMm`]: `The sheet gives dimensions from ${first} to ${last} mm: measure within them.`,
      });
  });
}
