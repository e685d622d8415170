import type { Metadata } from "next";
import { redirect } from "next/navigation";
import { SelectField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { shortestPassword } from "@/lib/access/password";
import { isOpened } from "@/lib/records/accounts";
import { open } from "./actions";

export const metadata: Metadata = { title: "Open the clinic" };

export default async function FirstRun() {
  if (await isOpened()) redirect("/sign-in");
  const zones = [...Intl.supportedValuesOf("timeZone"), "UTC"].map((zone) => ({ value: zone, label: zone.replaceAll("_", " ") }));
  return (
    <>
      <PageHead title="Open your clinic" />
      <p className="lead">
        This store is new. Name the clinic and its first administrator, who then gives accounts to prosthetists, assistants and
        technicians. An administrator manages accounts and limits, and does not sign.
      </p>
      <ActionForm action={open}>
        <TextField name="clinicName" label="The clinic’s name" autoComplete="organization" />
        <SelectField
          name="timeZone"
          label="The clinic’s time zone"
          options={zones}
          hint="Times are shown in this zone and kept in UTC."
        />
        <TextField
          name="phone"
          label="The clinic’s telephone number"
          type="tel"
          optional
          autoComplete="tel"
          hint="Wearers who record a wear trial on their own telephone are shown it, to call you."
        />
        <TextField name="name" label="Your name" autoComplete="name" />
        <TextField name="email" label="Your e-mail" type="email" autoComplete="username" />
        <TextField
          name="password"
          label="A password"
          type="password"
          autoComplete="new-password"
          hint={`At least ${shortestPassword} characters. It cannot be looked up later.`}
        />
        <SubmitButton sending="Opening…">Open the clinic</SubmitButton>
      </ActionForm>
    </>
  );
}
