"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { beginSecondFactor, confirmSecondFactor, endSecondFactor } from "@/lib/records/second-factor";

const leadsTo = () => "/my-second-factor";

export const begin = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: beginSecondFactor, leadsTo });

export const confirm = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: confirmSecondFactor, leadsTo });

export const end = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: endSecondFactor, leadsTo });
