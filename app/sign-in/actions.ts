"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { withoutPasswords } from "@/app/_forms/perform";
import { type FormState, valuesOf } from "@/app/_parts/form-state";
import { endSession, type SignInResult, signInWithPassword } from "@/lib/access/sign-in";

const words: Record<Exclude<SignInResult, "signed in">, string> = {
  refused: "This e-mail address and password do not belong together.",
  "not active": "This account is not active. Ask the clinic's administrator.",
  "too many tries": "Too many tries. Wait a minute, then try again.",
};

export async function signIn(_before: FormState, form: FormData): Promise<FormState> {
  const values = withoutPasswords(valuesOf(form));
  const email = String(form.get("email") ?? "").trim();
  const password = String(form.get("password") ?? "");
  const errors = {
    ...(email === "" ? { email: "An e-mail address is missing." } : {}),
    ...(password === "" ? { password: "A password is missing." } : {}),
  };
  if (Object.keys(errors).length > 0) return { values, errors };
  const result = await signInWithPassword({ email, password });
  if (result !== "signed in") return { values, errors: {}, message: words[result] };
  revalidatePath("/", "layout");
  redirect(wayBack(String(form.get("back") ?? "")));
}

export async function signOut(): Promise<void> {
  await endSession();
  revalidatePath("/", "layout");
  redirect("/sign-in");
}

/** Only an address inside this program, so that a crafted link cannot lead elsewhere. */
const wayBack = (back: string): string => (/^\/(?![/\\])[^\\]*$/.test(back) ? back : "/");
