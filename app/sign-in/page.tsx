import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { HiddenField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { isOpened } from "@/lib/records/accounts";
import { clinicSettings } from "@/lib/records/clinic";
import { signIn } from "./actions";

export const metadata: Metadata = { title: "Sign in" };

export default async function SignIn({ searchParams }: { searchParams: Promise<{ back?: string; changed?: string }> }) {
  if (!(await isOpened())) redirect("/first-run");
  const { back = "", changed } = await searchParams;
  const clinic = await clinicSettings();
  return (
    <>
      <PageHead
        title="Sign in"
        about={`The series of check sockets, fittings and wear trials of ${clinic?.name ?? "this clinic"}.`}
      />
      {changed === "yes" && (
        <p className="lead" role="status">
          Your password was changed, and every session ended. Sign in with the new one.
        </p>
      )}
      <ActionForm action={signIn}>
        <HiddenField name="back" value={back} />
        <TextField name="email" label="E-mail" type="email" autoComplete="username" />
        <TextField name="password" label="Password" type="password" autoComplete="current-password" />
        <SubmitButton sending="Signing in…">Sign in</SubmitButton>
      </ActionForm>
    </>
  );
}
