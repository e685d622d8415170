import type { Metadata } from "next";
import { codeOf } from "@/app/_forms/code-of";
import { TextField } from "@/app/_parts/fields";
import { ActionForm } from "@/app/_parts/form";
import { PageHead } from "@/app/_parts/page-head";
import { ProofFields } from "@/app/_parts/proof-fields";
import { CodeToScan } from "@/app/_parts/scannable-code";
import { SubmitButton } from "@/app/_parts/submit-button";
import { requireActor } from "@/lib/access/session";
import { seeSecondFactor } from "@/lib/records/second-factor";
import { begin, confirm, end } from "./actions";
import styles from "./second-factor.module.css";

export const metadata: Metadata = { title: "Your second factor" };

export default async function MySecondFactor() {
  const actor = await requireActor("/my-second-factor");
  const factor = await seeSecondFactor(actor);
  return (
    <>
      <PageHead title="Your second factor" about={`${actor.name}, ${actor.role}`} />
      {factor.state === "none" && (
        <>
          <p className="lead">
            Any program that gives time-based codes (RFC 6238) on a device of yours can be the second factor. Its code is then
            asked for beside your password when you sign in, and again whenever you sign for a socket.
          </p>
          <ActionForm action={begin}>
            <TextField name="password" label="Your password" type="password" autoComplete="current-password" />
            <SubmitButton>Begin</SubmitButton>
          </ActionForm>
        </>
      )}
      {factor.state === "begun" && (
        <>
          <section aria-labelledby="device">
            <h2 id="device">1. Give it to your device</h2>
            <div className={styles.device}>
              <CodeToScan code={codeOf(factor.address)} label="Code to scan with the device that will give your codes" />
              <p>
                Or type this key there: <code className={styles.key}>{factor.key.match(/.{1,4}/g)?.join(" ")}</code>
              </p>
            </div>
          </section>
          <section aria-labelledby="kept">
            <h2 id="kept">2. Keep these for the day the device is lost</h2>
            <p>Each is good once, at sign-in. Write them down now: they are not shown again.</p>
            <ul className={styles.codes}>
              {factor.backupCodes.map((code) => (
                <li key={code}>
                  <code>{code}</code>
                </li>
              ))}
            </ul>
          </section>
          <section aria-labelledby="confirm">
            <h2 id="confirm">3. Confirm</h2>
            <ActionForm action={confirm}>
              <TextField
                name="passwordCode"
                label="The code that your device shows now"
                autoComplete="one-time-code"
                hint="Until then nothing is asked for but your password."
              />
              <SubmitButton>Confirm</SubmitButton>
            </ActionForm>
          </section>
        </>
      )}
      {factor.state === "on" && (
        <>
          <p className="lead">A code of your device is asked for when you sign in, and whenever you sign for a socket.</p>
          <details>
            <summary>Take it away</summary>
            <ActionForm action={end}>
              <ProofFields withCode />
              <SubmitButton kind="stop">Take the second factor away</SubmitButton>
            </ActionForm>
          </details>
        </>
      )}
    </>
  );
}
