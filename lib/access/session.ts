/** Who is asking: the account behind this request's session. */
import { headers } from "next/headers";
import { redirect } from "next/navigation";
import type { Actor } from "./actor";
import { auth } from "./auth";
import { isAccountRole } from "./roles";

export async function currentActor(): Promise<Actor | null> {
  const session = await (await auth()).api.getSession({ headers: await headers() });
  const user = session?.user;
  if (!user?.role || !isAccountRole(user.role) || user.banned) return null;
  return { id: user.id, name: user.name, role: user.role, credentialsLine: user.credentialsLine ?? undefined };
}

/** For a page: the person who asks, or the sign-in page with the way back. */
export async function requireActor(backTo: string): Promise<Actor> {
  return (await currentActor()) ?? redirect(`/sign-in?back=${encodeURIComponent(backTo)}`);
}
