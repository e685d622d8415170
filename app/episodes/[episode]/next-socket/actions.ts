"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { specifySocket } from "@/lib/records/specify-socket";

export const specify = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: specifySocket, leadsTo: ({ episodeId }) => `/episodes/${episodeId}#series` });
