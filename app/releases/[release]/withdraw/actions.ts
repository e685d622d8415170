"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { withdrawSignature } from "@/lib/records/withdraw-signature";

export const withdraw = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: withdrawSignature, leadsTo: ({ signOffId }) => `/releases/${signOffId}` });
