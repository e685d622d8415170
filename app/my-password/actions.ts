"use server";

import { perform } from "@/app/_forms/perform";
import type { FormState } from "@/app/_parts/form-state";
import { changeOwnPassword } from "@/lib/records/accounts";

export const change = async (_before: FormState, form: FormData): Promise<FormState> =>
  perform({
    form,
    command: changeOwnPassword,
    // The names of these fields say that they are passwords, so that nothing sends them back to the page.
    shape: ({ presentPassword, newPassword, newPasswordAgain }) => ({
      current: presentPassword,
      password: newPassword,
      again: newPasswordAgain,
    }),
    fieldOf: (path) => ({ current: "presentPassword", password: "newPassword", again: "newPasswordAgain" })[path] ?? path,
    leadsTo: () => "/sign-in?changed=yes",
  });
