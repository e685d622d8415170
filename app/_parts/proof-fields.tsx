import { TextField } from "./fields";

/** What whoever signs proves again at that moment: the password, and the code of the second factor where there is one. */
export function ProofFields({ withCode }: { withCode: boolean }) {
  return (
    <>
      <TextField name="password" label="Your password, again" type="password" autoComplete="current-password" />
      {withCode && (
        <TextField
          name="passwordCode"
          label="Code of your device"
          autoComplete="one-time-code"
          hint="Six digits, the one it shows now. A code signs once."
        />
      )}
    </>
  );
}
