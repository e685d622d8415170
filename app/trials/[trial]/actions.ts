"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { now } from "@/lib/records/clock";
import { lookAtSkin, recordWearTrial } from "@/lib/records/record-wear-trial";

/** The form holds one event; a time that was left free is this moment. */
const oneEvent = ({ trialId, ...event }: Record<string, unknown>) => ({
  trialId,
  events: [
    {
      ...event,
      at: event.at === "" || event.at === undefined ? now().toISOString() : event.at,
      ...(event.kind === "check-in" ? { feelings: event.feelings ?? [] } : {}),
    },
  ],
});

export const record = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({
    form,
    command: recordWearTrial,
    shape: oneEvent,
    fieldOf: (path) => path.replace(/^events\.0\./, ""),
    leadsTo: ({ trialId }) => `/trials/${trialId}`,
  });

export const look = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: lookAtSkin, leadsTo: ({ trialId }) => `/trials/${trialId}#skin` });
