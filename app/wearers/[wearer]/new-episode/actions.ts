"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { openEpisode } from "@/lib/records/open-episode";

export const open = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: openEpisode, leadsTo: ({ episodeId }) => `/episodes/${episodeId}` });
