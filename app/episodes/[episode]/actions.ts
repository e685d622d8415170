"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { acknowledgeCautions } from "@/lib/records/acknowledge-cautions";
import { carryAdjustment, dropCarriedAdjustment } from "@/lib/records/carry-adjustment";
import { deliverSocket } from "@/lib/records/deliver-socket";

const toEpisode = ({ episodeId }: { episodeId: string }) => `/episodes/${episodeId}`;

export const acknowledge = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: acknowledgeCautions, leadsTo: toEpisode });

export const carry = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: carryAdjustment, leadsTo: toEpisode });

export const drop = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: dropCarriedAdjustment, leadsTo: toEpisode });

export const deliver = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: deliverSocket, leadsTo: toEpisode });
