/** The thin way from a form to a command: who asks, what was typed, and what to say when it is refused. */
import { redirect } from "next/navigation";
import type { FormState } from "@/app/_parts/form-state";
import type { Actor } from "@/lib/access/actor";
import { currentActor } from "@/lib/access/session";
import { clinicSettings } from "@/lib/records/clinic";
import { logFault } from "@/lib/records/faults";
import { ChangedMeanwhile, InputRefused, Refusal } from "@/lib/records/refusals";
import { fromForm, typedValues } from "./from-form";

interface Performance<Result> {
  form: FormData;
  command: (actor: Actor, input: unknown) => Promise<Result>;
  /** Where to go once it is done. */
  then: (result: Result) => string;
  /** Turns what the form holds into what the command reads, where they differ. */
  shape?: (input: Record<string, unknown>) => unknown;
}

export async function perform<Result>({ form, command, then, shape = (input) => input }: Performance<Result>): Promise<FormState> {
  const values = typedValues(form);
  const actor = await currentActor();
  if (!actor)
    return { values, errors: {}, message: "Your session has ended. Nothing was saved, and what you typed is still here: sign in again in another tab, then send it once more.", signIn: true };
  let done: Result;
  try {
    const clinic = await clinicSettings();
    done = await command(actor, shape(fromForm(form, clinic?.timeZone ?? "UTC")));
  } catch (error) {
    return refusalState(error, values);
  }
  redirect(then(done));
}

export function refusalState(error: unknown, values: FormState["values"]): FormState {
  if (error instanceof InputRefused) return { values, errors: error.fields, message: error.tell };
  if (error instanceof ChangedMeanwhile)
    return { values: { ...values, version: String(error.version) }, errors: {}, message: error.tell, changed: asText(error.theirs) };
  if (error instanceof Refusal) return { values, errors: {}, message: error.tell };
  const faultId = logFault(error, "form");
  return { values, errors: {}, message: `Something went wrong here (fault ${faultId}). Nothing was saved, and what you typed is still here. Try again; if it stays, tell whoever runs this server the fault's number.` };
}

const asText = (fields: Record<string, unknown>): Record<string, string> =>
  Object.fromEntries(
    Object.entries(fields).map(([name, value]) => [name, value === null || value === undefined ? "" : value instanceof Date ? value.toISOString() : typeof value === "object" ? JSON.stringify(value) : String(value)]),
  );
