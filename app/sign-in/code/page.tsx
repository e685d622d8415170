import type { Metadata } from "next";
import { HiddenField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { signInByCode } from "../actions";

export const metadata: Metadata = { title: "Your code" };

export default async function SignInCode({ searchParams }: { searchParams: Promise<{ back?: string }> }) {
  const { back = "" } = await searchParams;
  return (
    <>
      <PageHead title="Your code" about="The password was right. This account asks for the code of a device as well." />
      <ActionForm action={signInByCode}>
        <HiddenField name="back" value={back} />
        <TextField
          name="passwordCode"
          label="Code of your device"
          autoComplete="one-time-code"
          hint="Six digits. Without the device: one of the codes that you kept for this, each good once."
        />
        <SubmitButton sending="Signing in…">Go on</SubmitButton>
      </ActionForm>
      <p>
        <Link href="/sign-in">Sign in from the beginning</Link>
      </p>
    </>
  );
}
