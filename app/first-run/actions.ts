"use server";

import { redirect } from "next/navigation";
import { refused, withoutPasswords } from "@/app/_forms/perform";
import { type FormState, inputOf, valuesOf } from "@/app/_parts/form-state";
import { openClinic } from "@/lib/records/accounts";

export async function open(_before: FormState, form: FormData): Promise<FormState> {
  try {
    await openClinic(inputOf(valuesOf(form)).input);
  } catch (error) {
    return refused(error, withoutPasswords(valuesOf(form)));
  }
  redirect("/sign-in");
}
