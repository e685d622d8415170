/** The thin way from a form to a command: who asks, what was typed, and what to say when it is refused. */
import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { type FormState, type FormValues, inputOf, refusedState, untouched, valuesOf } from "@/app/_parts/form-state";
import type { Actor } from "@/lib/access/actor";
import { currentActor } from "@/lib/access/session";
import { clinicSettings } from "@/lib/records/clinic";
import { fromClinicTime } from "@/lib/records/clinic-time";
import { logFault } from "@/lib/records/faults";
import { AskedAbout, InputRefused, Refusal } from "@/lib/records/refusals";
import { unitsFor } from "@/lib/records/units";
import { inUnits } from "./in-units";

interface Asked<Result> {
  form: FormData;
  command: (actor: Actor, input: unknown) => Promise<Result>;
  /** Turns what the form holds into what the command reads, where they differ. */
  shape?: (input: Record<string, unknown>) => unknown;
  /** The field of the form that a path of the command's input came from, where `shape` moved it. */
  fieldOf?: (path: string) => string;
  /** The words of the fields, for showing two versions beside each other. */
  labels?: Readonly<Record<string, string>>;
}

type Performance<Result> = Asked<Result> & {
  /** Where to go once it is done. */
  leadsTo: (result: Result) => string;
};

/** For a form that stays on its page. */
type PerformanceHere<Result> = Asked<Result> & {
  /** What the form tells once it is done. */
  tells: (result: Result) => Pick<FormState, "saved" | "shownOnce">;
};

const sessionEnded =
  "Your session has ended. Nothing was saved, and what you typed is still here. Sign in again in another tab, then send it once more.";

export async function perform<Result>({ leadsTo, ...asked }: Performance<Result>): Promise<FormState> {
  const tried = await tryCommand(asked);
  if ("refused" in tried) return tried.refused;
  redirect(leadsTo(tried.done));
}

export async function performHere<Result>({ tells, ...asked }: PerformanceHere<Result>): Promise<FormState> {
  const tried = await tryCommand(asked);
  return "refused" in tried ? tried.refused : { ...untouched, ...tells(tried.done) };
}

async function tryCommand<Result>({
  form,
  command,
  shape = (input) => input,
  fieldOf = (path) => path,
  labels = {},
}: Asked<Result>): Promise<{ done: Result } | { refused: FormState }> {
  const typed = withoutPasswords(valuesOf(form));
  const actor = await currentActor();
  if (!actor) return { refused: { values: typed, errors: {}, message: sessionEnded, signIn: true } };
  try {
    const [clinic, units] = await Promise.all([clinicSettings(), unitsFor(actor)]);
    const meant = inUnits(inInstants(valuesOf(form), clinic?.timeZone ?? "UTC"), units);
    const done = await command(actor, shape(inputOf(meant).input));
    // Everything a page shows may follow from what was just written.
    revalidatePath("/", "layout");
    return { done };
  } catch (error) {
    return { refused: refused(withNames(error, fieldOf), typed, labels) };
  }
}

export function refused(error: unknown, typed: FormValues, labels: Readonly<Record<string, string>> = {}): FormState {
  if (error instanceof Refusal) return refusedState(typed, error, labels);
  const faultId = logFault(error, "form");
  return {
    values: typed,
    errors: {},
    message: `Something went wrong here (fault ${faultId}). Nothing was saved, and what you typed is still here. Try again; if it stays, tell whoever runs this server the fault's number.`,
  };
}

function withNames(error: unknown, fieldOf: (path: string) => string): unknown {
  if (error instanceof InputRefused) return new InputRefused(renamed(error.fields, fieldOf));
  return error instanceof AskedAbout ? new AskedAbout(renamed(error.fields, fieldOf), error.asked) : error;
}

const renamed = (fields: Record<string, string>, fieldOf: (path: string) => string): Record<string, string> =>
  Object.fromEntries(Object.entries(fields).map(([path, message]) => [fieldOf(path), message]));

export const withoutPasswords = (values: FormValues): FormValues =>
  Object.fromEntries(Object.entries(values).filter(([name]) => !/password/i.test(name)));

/** Times on the clinic's clock become instants; everything else stays as it was typed. */
const inInstants = (values: FormValues, timeZone: string): FormValues =>
  Object.fromEntries(
    Object.entries(values).map(([name, value]) => [name, typeof value === "string" ? fromClinicTime(value, timeZone) : value]),
  );
