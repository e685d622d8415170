"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { checkMadeSocket } from "@/lib/records/check-made-socket";

export const check = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: checkMadeSocket, leadsTo: ({ signOffId }) => `/releases/${signOffId}/made` });
