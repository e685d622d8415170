"use server";

import { revalidatePath } from "next/cache";
import { redirect } from "next/navigation";
import { withoutPasswords } from "@/app/_forms/perform";
import { type FormState, valuesOf } from "@/app/_parts/form-state";
import { signInWithCode } from "@/lib/access/second-factor-of-session";
import { endSession, type SignInResult, signInWithPassword } from "@/lib/access/sign-in";

const words: Record<Exclude<SignInResult, "signed in" | "code wanted">, string> = {
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
  const back = wayBack(String(form.get("back") ?? ""));
  if (result === "code wanted") redirect(`/sign-in/code?back=${encodeURIComponent(back)}`);
  if (result !== "signed in") return { values, errors: {}, message: words[result] };
  revalidatePath("/", "layout");
  redirect(back);
}

/** The second step, where the account has a device that gives codes. */
export async function signInByCode(_before: FormState, form: FormData): Promise<FormState> {
  const code = String(form.get("passwordCode") ?? "").trim();
  if (code === "") return { values: {}, errors: { passwordCode: "The code is missing." } };
  if (!(await signInWithCode(code))) return { values: {}, errors: {}, message: wrongCode };
  revalidatePath("/", "layout");
  redirect(wayBack(String(form.get("back") ?? "")));
}

const wrongCode =
  "This code is not good now. Wait for the next one and type that; after ten minutes, or too many tries, sign in from the beginning.";

export async function signOut(): Promise<void> {
  await endSession();
  revalidatePath("/", "layout");
  redirect("/sign-in");
}

/** Only an address inside this program, so that a crafted link cannot lead elsewhere. */
const wayBack = (back: string): string => (/^\/(?![/\\])[^\\]*$/.test(back) ? back : "/");
