import { redirect } from "next/navigation";
import { may } from "@/lib/access/roles";
import { requireActor } from "@/lib/access/session";

/** The first page after signing in is the one where the person's work is. */
export default async function Start(): Promise<never> {
  const actor = await requireActor("/");
  redirect(may(actor, "see wearers") ? "/today" : may(actor, "see socket orders") ? "/workshop" : "/accounts");
}
