"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { fieldOfFitting, fittingFromForm } from "@/app/sockets/[socket]/fitting/fitting-input";
import { correctFitting } from "@/lib/records/correct-fitting";
import { lookAfterFitting } from "@/lib/records/look-after-fitting";

export const correct = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({
    form,
    command: correctFitting,
    leadsTo: ({ fittingId }) => `/fittings/${fittingId}`,
    shape: fittingFromForm,
    fieldOf: fieldOfFitting,
  });

export const look = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: lookAfterFitting, leadsTo: ({ fittingId }) => `/fittings/${fittingId}#skin` });
