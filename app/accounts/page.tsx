import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { CheckBox, HiddenField, SelectField, TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { SubmitButton } from "@/app/_parts/submit-button";
import { wordOptions } from "@/app/_parts/word-options";
import { shortestPassword } from "@/lib/access/password";
import { accountRoles } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";
import { seeAccounts } from "@/lib/records/see-accounts";
import styles from "./accounts.module.css";
import { add, change } from "./actions";

export const metadata: Metadata = { title: "Accounts" };

const credentialsHint = "As it stands under a signature, such as CPO and the number of the registration.";

export default async function Accounts() {
  const actor = await requireActor("/accounts");
  const accounts = await show(seeAccounts(actor, null));
  return (
    <>
      <PageHead
        title="Accounts"
        about="Only a prosthetist signs. A technician sees orders and release sheets. An administrator manages accounts and limits."
      />
      <ul className={styles.list}>
        {accounts.map((account) => (
          <li key={account.id}>
            <div className={styles.line}>
              <strong>{account.name}</strong>
              <span>{account.role}</span>
              <span className="soft">{account.email}</span>
              {account.banned && <span className={styles.ended}>may not sign in</span>}
            </div>
            <details>
              <summary>Change {account.name}</summary>
              <ActionForm action={change}>
                <HiddenField name="userId" value={account.id} />
                <HiddenField name="version" value={String(account.version)} />
                <TextField name="name" label="Name" first={account.name} />
                <SelectField name="role" label="Role" options={wordOptions(accountRoles)} first={account.role} />
                <TextField
                  name="credentialsLine"
                  label="Credentials line"
                  optional
                  hint={credentialsHint}
                  first={account.credentialsLine ?? ""}
                />
                <TextField
                  name="password"
                  label="A new password"
                  type="password"
                  optional
                  autoComplete="new-password"
                  hint="Only for someone who lost theirs. It ends their sessions."
                />
                {account.twoFactorEnabled && (
                  <CheckBox
                    name="withoutCode"
                    label="Take away the second factor"
                    hint="Only for someone who lost the device that gives their codes."
                  />
                )}
                <CheckBox name="active" label="May sign in" first={account.banned ? "" : "yes"} />
                <SubmitButton>Save</SubmitButton>
              </ActionForm>
            </details>
          </li>
        ))}
      </ul>
      <section aria-labelledby="add">
        <h2 id="add">Add an account</h2>
        <ActionForm action={add}>
          <TextField name="name" label="Name" />
          <TextField name="email" label="E-mail" type="email" />
          <SelectField name="role" label="Role" options={wordOptions(accountRoles)} />
          <TextField name="credentialsLine" label="Credentials line" optional hint={credentialsHint} />
          <TextField
            name="password"
            label="A first password"
            type="password"
            autoComplete="new-password"
            hint={`At least ${shortestPassword} characters. Give it to them in person.`}
          />
          <SubmitButton>Add the account</SubmitButton>
        </ActionForm>
      </section>
    </>
  );
}
