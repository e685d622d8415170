"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { changeLimit } from "@/lib/records/change-limit";
import { changeClinicPhone } from "@/lib/records/clinic-phone";
import { askForCountersignatures } from "@/lib/records/countersign";
import { changeClinicUnits } from "@/lib/records/units";

export const change = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: changeLimit, leadsTo: ({ name }) => `/rules#limit-${name}` });

export const changeUnits = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: changeClinicUnits, leadsTo: () => "/rules#units" });

export const changePhone = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: changeClinicPhone, leadsTo: () => "/rules#phone" });

export const changeCountersigning = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: askForCountersignatures, leadsTo: () => "/rules#countersigning" });
