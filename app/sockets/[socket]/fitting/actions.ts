"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { recordFitting } from "@/lib/records/record-fitting";
import { fieldOfFitting, fittingFromForm } from "./fitting-input";

export const fit = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({
    form,
    command: recordFitting,
    leadsTo: ({ socketId }) => `/sockets/${socketId}/what-next`,
    shape: fittingFromForm,
    fieldOf: fieldOfFitting,
  });
