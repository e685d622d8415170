"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { measureLimb } from "@/lib/records/measure-limb";

export const measure = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: measureLimb, leadsTo: ({ episodeId }) => `/episodes/${episodeId}#limb` });
