import type { Metadata } from "next";
import { TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { shortestPassword } from "@/lib/access/password";
import { requireActor } from "@/lib/access/session";
import { change } from "./actions";

export const metadata: Metadata = { title: "Your password" };

export default async function MyPassword() {
  const actor = await requireActor("/my-password");
  return (
    <>
      <PageHead title="Your password" about={`${actor.name}, ${actor.role}`} />
      <p className="lead">
        Change the password that an administrator gave you: it is asked for again when you sign, and only you should know it.
        Every session of this account ends with the change.
      </p>
      <ActionForm action={change}>
        <TextField name="presentPassword" label="Your present password" type="password" autoComplete="current-password" />
        <TextField
          name="newPassword"
          label="A new password"
          type="password"
          autoComplete="new-password"
          hint={`At least ${shortestPassword} characters.`}
        />
        <TextField name="newPasswordAgain" label="The new password, again" type="password" autoComplete="new-password" />
        <SubmitButton>Change it</SubmitButton>
      </ActionForm>
      <p>
        <Link href="/my-second-factor">Codes of a device beside the password</Link>
      </p>
      <p>
        <Link href="/my-units">Choose your units</Link>
      </p>
    </>
  );
}
