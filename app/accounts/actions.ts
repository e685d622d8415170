"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { addAccount, changeAccount } from "@/lib/records/accounts";

const labels = { name: "Name", role: "Role", credentialsLine: "Under a signature", active: "May sign in" };

export const add = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: addAccount, leadsTo: () => "/accounts" });

export const change = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: changeAccount, leadsTo: () => "/accounts", labels });
