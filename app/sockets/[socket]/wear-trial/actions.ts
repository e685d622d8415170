"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { planWearTrial } from "@/lib/records/plan-wear-trial";

export const plan = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: planWearTrial, leadsTo: ({ trialId }) => `/trials/${trialId}` });
