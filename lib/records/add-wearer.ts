import { z } from "zod";
import { cautionKinds } from "@/lib/fit";
import { command, type Store } from "./command";
import { choice, maybeAmount, maybeChoice, maybeDay, maybeText, newRecordId, rows, text } from "./input";
import { InputRefused } from "./refusals";

export const wearerFields = {
  clinicNumber: text("A clinic number", 40),
  name: text("A name", 120),
  birthOn: maybeDay("The date of birth"),
  heightMm: maybeAmount({ min: 400, max: 2500, unit: "mm", what: "A body height" }),
  bodyMassKg: maybeAmount({ min: 3, max: 400, unit: "kg", what: "A body mass" }),
  handedness: maybeChoice(["right", "left", "both", "not said"]),
  occupation: maybeText("What the wearer does", 200),
};

export const CautionInput = z.strictObject({
  kind: choice("what to be careful of", cautionKinds),
  note: maybeText("The note", 400),
});

const WearerInput = z.strictObject({ id: newRecordId, ...wearerFields, cautions: rows(CautionInput, 30) });

/** Adds a person who wears, or will wear, a prosthesis. */
export const addWearer = command({
  permission: "add a wearer",
  input: WearerInput,
  run: async (store, { id, cautions, ...fields }) => {
    if (id && (await store.db.wearer.findUnique({ where: { id } }))) return { wearerId: id };
    await refuseTakenNumber(store, fields.clinicNumber);
    refuseBirthInFuture(store, fields.birthOn);
    const wearerId = id ?? store.newId();
    await store.db.wearer.create({ data: { ...nulls(fields), id: wearerId, addedById: store.actor.id, addedAt: store.now } });
    for (const caution of cautions) await addCautionRow(store, wearerId, caution);
    await store.note({ action: "added a wearer", kind: "wearer", id: wearerId, wearerId, after: { ...fields, cautions } });
    return { wearerId };
  },
});

export async function addCautionRow(store: Store, wearerId: string, caution: z.output<typeof CautionInput>): Promise<string> {
  const id = store.newId();
  await store.db.caution.create({
    data: { id, wearerId, kind: caution.kind, note: caution.note ?? null, addedById: store.actor.id, addedAt: store.now },
  });
  return id;
}

export async function refuseTakenNumber(store: Store, clinicNumber: string, except?: string): Promise<void> {
  const holder = await store.db.wearer.findUnique({ where: { clinicNumber }, select: { id: true } });
  if (holder && holder.id !== except) throw new InputRefused({ clinicNumber: "Another wearer has this number already." });
}

export function refuseBirthInFuture(store: Store, birthOn: string | undefined): void {
  if (birthOn && birthOn > store.now.toISOString().slice(0, 10))
    throw new InputRefused({ birthOn: "This day has not come yet." });
  if (birthOn && birthOn < "1900-01-01") throw new InputRefused({ birthOn: "This is too long ago. Look at the year." });
}

/** Optional fields that were left free are kept as null. */
export function nulls<T extends Record<string, unknown>>(
  fields: T,
): { [K in keyof T]: undefined extends T[K] ? Exclude<T[K], undefined> | null : T[K] } {
  const entries = Object.entries(fields).map(([key, value]) => [key, value === undefined ? null : value]);
  return Object.fromEntries(entries) as ReturnType<typeof nulls<T>>; // the same keys, with undefined turned into null
}
