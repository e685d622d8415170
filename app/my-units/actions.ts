"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { changeOwnUnits } from "@/lib/records/units";

export const change = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: changeOwnUnits, leadsTo: () => "/my-units?saved=yes" });
