"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { addAddendum } from "@/lib/records/add-addendum";

export const add = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: addAddendum, leadsTo: ({ signOffId }) => `/releases/${signOffId}` });
