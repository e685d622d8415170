"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { sign } from "@/lib/records/sign";

/** The ticks come as { gate: "yes" }, the command reads the gates that were ticked. */
const ticked = (input: Record<string, unknown>) => ({
  ...input,
  closeRead: Object.keys((input.closeRead ?? {}) as Record<string, string>),
}); // boxes of this form, named closeRead.GATE

export const signEvidence = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: sign, shape: ticked, leadsTo: ({ signOffId }) => `/releases/${signOffId}` });
