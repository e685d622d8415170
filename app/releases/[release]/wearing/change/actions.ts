"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { planWearing } from "@/lib/records/plan-wearing";

export const plan = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({
    form,
    command: planWearing,
    leadsTo: ({ signOffId }) => `/releases/${signOffId}/wearing`,
    labels: { startOn: "First day", call: "Whom to call" },
  });
