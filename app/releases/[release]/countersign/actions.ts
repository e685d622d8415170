"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { countersign } from "@/lib/records/countersign";

export const signAsSecond = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: countersign, leadsTo: ({ signOffId }) => `/releases/${signOffId}` });
