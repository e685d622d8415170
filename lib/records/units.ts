/** The units that a person reads and writes in. What is kept is metric. */
import { z } from "zod";
import type { Actor } from "@/lib/access/actor";
import { may } from "@/lib/access/roles";
import { type MeasuredQuantity, type Unit, unitsOf } from "@/lib/fit";
import { inTransaction, parseInput, requireAccount } from "./command";
import { database } from "./database";
import { choice, maybeChoice } from "./input";
import { NotAllowed, NotFound } from "./refusals";

export type UnitsOfPerson = Readonly<Record<MeasuredQuantity, Unit>>;

const metric: UnitsOfPerson = { length: "mm", mass: "kg", force: "N" };

const isUnit = (quantity: MeasuredQuantity, unit: string | null | undefined): unit is Unit =>
  (unitsOf[quantity] as readonly string[]).includes(unit ?? "");

/** The person's own choice, else the clinic's. */
export async function unitsFor(actor: Actor | null): Promise<UnitsOfPerson> {
  const db = await database();
  const columns = { lengthUnit: true, massUnit: true, forceUnit: true } as const;
  const [clinic, person] = await Promise.all([
    db.clinic.findUnique({ where: { id: 1 }, select: columns }),
    actor ? db.user.findUnique({ where: { id: actor.id }, select: columns }) : null,
  ]);
  const chosen = (quantity: MeasuredQuantity): Unit => {
    const column = `${quantity}Unit` as const;
    return [person?.[column], clinic?.[column]].find((unit) => isUnit(quantity, unit)) ?? metric[quantity];
  };
  return { length: chosen("length"), mass: chosen("mass"), force: chosen("force") };
}

/** What the person has chosen; null where they read as the clinic does. */
export async function seeOwnUnits(actor: Actor) {
  requireAccount(actor, "see the units of an account");
  const person = await (await database()).user.findUnique({
    where: { id: actor.id },
    select: { lengthUnit: true, massUnit: true, forceUnit: true },
  });
  if (!person) throw new NotFound("account");
  return person;
}

const OwnUnits = z.strictObject({
  lengthUnit: maybeChoice(unitsOf.length),
  massUnit: maybeChoice(unitsOf.mass),
  forceUnit: maybeChoice(unitsOf.force),
});

/** Everybody chooses their own; a free choice is the clinic's. */
export async function changeOwnUnits(actor: Actor, raw: unknown): Promise<{ userId: string }> {
  requireAccount(actor, "change the units of an account");
  const { lengthUnit = null, massUnit = null, forceUnit = null } = parseInput(OwnUnits, raw);
  return inTransaction(actor, async (store) => {
    const before = await store.db.user.findUnique({ where: { id: actor.id } });
    if (!before) throw new NotFound("account");
    const after = { lengthUnit, massUnit, forceUnit };
    await store.db.user.update({ where: { id: actor.id }, data: { ...after, updatedAt: store.now } });
    await store.note({
      action: "changed their own units",
      kind: "account",
      id: actor.id,
      before: { lengthUnit: before.lengthUnit, massUnit: before.massUnit, forceUnit: before.forceUnit },
      after,
    });
    return { userId: actor.id };
  });
}

const ClinicUnits = z.strictObject({
  lengthUnit: choice("a unit of length", unitsOf.length),
  massUnit: choice("a unit of mass", unitsOf.mass),
  forceUnit: choice("a unit of force", unitsOf.force),
});

/** What everybody reads who has not chosen otherwise. */
export async function changeClinicUnits(actor: Actor, raw: unknown): Promise<{ clinicId: number }> {
  if (!may(actor, "change a limit")) throw new NotAllowed("change a limit", actor.role);
  const after = parseInput(ClinicUnits, raw);
  return inTransaction(actor, async (store) => {
    const clinic = await store.db.clinic.findUnique({ where: { id: 1 } });
    if (!clinic) throw new NotFound("clinic");
    await store.db.clinic.update({ where: { id: 1 }, data: after });
    await store.note({
      action: "changed the clinic's units",
      kind: "clinic",
      id: "1",
      before: { lengthUnit: clinic.lengthUnit, massUnit: clinic.massUnit, forceUnit: clinic.forceUnit },
      after,
    });
    return { clinicId: 1 };
  });
}
