import { expect, test } from "./clinic";

test.use({ signedInAs: "nobody", records: "none" });

test("a new clinic is opened by its first administrator, who gives a colleague an account", async ({ page, context }) => {
  await page.goto("/");
  await expect(page.getByRole("heading", { name: "Open your clinic" })).toBeVisible();
  await page.getByLabel("The clinic’s name").fill("Lock Street Clinic");
  await page.getByLabel("The clinic’s time zone").selectOption("Europe/Lisbon");
  await page.getByLabel("The clinic’s telephone number").fill("+00 555 0123");
  await page.getByLabel("Your name").fill("Ada Brook");
  await page.getByLabel("Your e-mail").fill("ada@lock.example");
  await page.getByLabel("A password").fill("too short");
  await page.getByRole("button", { name: "Open the clinic" }).click();
  await expect(page.getByLabel("A password")).toHaveAccessibleDescription(/at least 12 characters/);
  await page.getByLabel("A password").fill("a long enough password");
  await page.getByRole("button", { name: "Open the clinic" }).click();

  const signIn = async (email: string, password: string) => {
    await page.getByLabel("E-mail").fill(email);
    await page.getByLabel("Password").fill(password);
    await page.getByRole("button", { name: "Sign in" }).click();
  };
  await expect(page.getByRole("heading", { name: "Sign in" })).toBeVisible();
  await signIn("ada@lock.example", "not her password");
  await expect(page.getByText("This e-mail address and password do not belong together.")).toBeVisible();
  await signIn("ada@lock.example", "a long enough password");
  await expect(page.getByRole("heading", { name: "Accounts", level: 1 })).toBeVisible();
  await page.goto("/rules");
  await expect(page.getByLabel("Telephone number")).toHaveValue("+00 555 0123");
  await page.goto("/accounts");

  await page.getByLabel("Name", { exact: true }).last().fill("Bo Lindqvist");
  await page.getByLabel("E-mail").fill("bo@lock.example");
  await page.getByLabel("Role").last().selectOption("prosthetist");
  await page.getByLabel("A first password").fill("given in person 1");
  await page.getByRole("button", { name: "Add the account" }).click();
  await expect(page.getByText("bo@lock.example")).toBeVisible();
  await page.goto("/first-run");
  await expect(page).not.toHaveURL(/first-run/);

  await context.clearCookies();
  await page.goto("/sign-in");
  await signIn("bo@lock.example", "given in person 1");
  await expect(page.getByText("Nobody is in fitting yet")).toBeVisible();
  await page.goto("/my-password");
  await page.getByLabel("Your present password").fill("given in person 1");
  await page.getByLabel("A new password").fill("known to nobody else");
  await page.getByLabel("The new password, again").fill("known to nobody else");
  await page.getByRole("button", { name: "Change it" }).click();
  await expect(page.getByRole("heading", { name: "Sign in" })).toBeVisible();
  await signIn("bo@lock.example", "known to nobody else");
  await expect(page.getByText("Nobody is in fitting yet")).toBeVisible();
});
