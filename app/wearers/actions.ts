"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { addWearer } from "@/lib/records/add-wearer";
import { addCaution, changeWearer, endCaution } from "@/lib/records/change-wearer";
import { wearerLabels } from "./wearer-fields";

const toWearer = ({ wearerId }: { wearerId: string }) => `/wearers/${wearerId}`;

export const add = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: addWearer, leadsTo: toWearer });

export const change = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: changeWearer, leadsTo: toWearer, labels: wearerLabels });

export const caution = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: addCaution, leadsTo: toWearer });

export const endOfCaution = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: endCaution, leadsTo: toWearer });
