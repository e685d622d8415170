import { parseSetCookieHeader, toCookieOptions } from "better-auth/cookies";
import { cookies, headers } from "next/headers";
import { auth } from "./auth";

export type SignInResult = "signed in" | "code wanted" | "refused" | "not active" | "too many tries";

/** Signs in through better-auth's own handler, so that its limit on tries holds, and keeps the session's cookie. */
export async function signInWithPassword({ email, password }: { email: string; password: string }): Promise<SignInResult> {
  const betterAuth = await auth();
  const { baseURL } = await betterAuth.$context;
  const asked = await headers();
  const response = await betterAuth.handler(
    new Request(`${baseURL}/sign-in/email`, {
      method: "POST",
      headers: {
        "content-type": "application/json",
        "x-forwarded-for": asked.get("x-forwarded-for") ?? "127.0.0.1",
        "user-agent": asked.get("user-agent") ?? "",
      },
      body: JSON.stringify({ email, password }),
    }),
  );
  if (response.status === 429) return "too many tries";
  if (response.status === 403) return "not active";
  if (!response.ok) return "refused";
  const jar = await cookies();
  for (const line of response.headers.getSetCookie()) {
    for (const [name, cookie] of parseSetCookieHeader(line))
      jar.set(name, decodeURIComponent(cookie.value), toCookieOptions(cookie));
  }
  const answer: unknown = await response.json();
  return typeof answer === "object" && answer !== null && "twoFactorRedirect" in answer ? "code wanted" : "signed in";
}

export async function endSession(): Promise<void> {
  await (await auth()).api.signOut({ headers: await headers() });
}
