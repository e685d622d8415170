import { z } from "zod";
import { limitById } from "@/lib/fit";
import { command } from "./command";
import { amount, id, text } from "./input";
import { limitsInForce } from "./limits-in-force";
import { InputRefused } from "./refusals";

/** Sets a limit that is this clinic's to set. The values before it stay, so that an old assessment is explained by the limits of its day. */
export const changeLimit = command({
  permission: "change a limit",
  input: z.strictObject({
    name: id("The limit"),
    value: amount({ min: -1_000_000, max: 1_000_000, what: "A limit" }),
    why: text("Why it is changed", 1000),
  }),
  run: async (store, { name, value, why }) => {
    const limit = limitById(await limitsInForce(store.db), name);
    if (!limit) throw new InputRefused({ name: "There is no such limit." });
    if (limit.kind !== "clinic setting")
      throw new InputRefused({
        value: "This limit comes from a published source or common practice; a clinic does not set it here.",
      });
    if (value < limit.low || value > limit.high)
      throw new InputRefused({ value: `This limit can be set from ${limit.low} to ${limit.high} ${limit.unit}.` });
    const last = await store.db.limit.findFirst({ where: { name }, orderBy: { version: "desc" }, select: { version: true } });
    const limitId = store.newId();
    await store.db.limit.create({
      data: {
        id: limitId,
        name,
        value,
        unit: limit.unit,
        low: limit.low,
        high: limit.high,
        source: limit.source,
        levels: limit.levels?.join(", ") ?? null,
        why,
        byId: store.actor.id,
        byName: store.actor.name,
        at: store.now,
        version: (last?.version ?? 0) + 1,
      },
    });
    await store.note({
      action: "changed a limit",
      kind: "limit",
      id: name,
      before: { value: limit.value },
      after: { value, why },
    });
    const open = await store.db.episode.findMany({
      where: { struckOutAt: null, closedAt: null, deliveredAt: null },
      select: { id: true },
    });
    for (const episode of open) store.touch(episode.id);
    return { name };
  },
});
