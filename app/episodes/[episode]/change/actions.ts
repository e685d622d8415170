"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { episodeLabels } from "@/app/wearers/episode-fields";
import { changeEpisode, setCourse, strikeOutEpisode } from "@/lib/records/open-episode";

const toEpisode = ({ episodeId }: { episodeId: string }) => `/episodes/${episodeId}`;

export const change = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: changeEpisode, leadsTo: toEpisode, labels: episodeLabels });

export const course = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: setCourse, leadsTo: toEpisode });

export const strikeOut = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: strikeOutEpisode, leadsTo: ({ wearerId }) => `/wearers/${wearerId}` });
