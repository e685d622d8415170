import { z } from "zod";
import { command } from "./command";
import { maybeText } from "./input";
import { NotFound } from "./refusals";

/** Whom a wearer calls; shown to them as it is typed. */
export const phone = maybeText("The clinic's telephone number", 40).pipe(
  z
    .string()
    .regex(/^\+?[\d\s()./-]{3,}$/, "A telephone number has digits, and at most spaces, + ( ) . / - between them.")
    .optional(),
);

/** Changes the telephone number that wearers are shown, or takes it away. */
export const changeClinicPhone = command({
  permission: "change a limit",
  input: z.strictObject({ phone }),
  run: async (store, { phone: number = null }) => {
    const clinic = await store.db.clinic.findUnique({ where: { id: 1 } });
    if (!clinic) throw new NotFound("clinic");
    await store.db.clinic.update({ where: { id: 1 }, data: { phone: number } });
    await store.note({
      action: "changed the clinic's telephone number",
      kind: "clinic",
      id: "1",
      before: { phone: clinic.phone },
      after: { phone: number },
    });
    return { clinicId: 1 };
  },
});
