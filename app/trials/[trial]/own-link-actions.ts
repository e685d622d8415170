"use server";

import { codeOf } from "@/app/_forms/code-of";
import { perform, performHere } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { siteAddress } from "@/lib/access/address";
import { makeWearerLink, withdrawWearerLink } from "@/lib/records/make-wearer-link";

/** The token stands behind the #: browsers do not send that part, and no server writes it into a log. */
export const makeLink = async (_before: FormState, form: FormData): Promise<FormState> =>
  performHere({
    form,
    command: makeWearerLink,
    tells: ({ linkId, token }) => {
      const address = `${new URL("/live/own", siteAddress()).href}#${token}`;
      return { shownOnce: { id: linkId, address, code: codeOf(address) } };
    },
  });

export const withdrawLink = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({ form, command: withdrawWearerLink, leadsTo: ({ trialId }) => `/trials/${trialId}#own-link` });
