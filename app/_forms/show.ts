import { notFound, redirect } from "next/navigation";
import type { Actor } from "@/lib/access/actor";
import { may, type Permission } from "@/lib/access/roles";
import { NotAllowed, NotFound } from "@/lib/records/refusals";

/** For the page of a form: who may not send it need not fill it in. */
export function onlyWho(actor: Actor, permission: Permission): void {
  if (!may(actor, permission)) redirect("/not-allowed");
}

/** For a page: what a query found, or the page that says why there is nothing to show. */
export async function show<Found>(reading: Promise<Found>): Promise<Found> {
  try {
    return await reading;
  } catch (error) {
    if (error instanceof NotFound) notFound();
    if (error instanceof NotAllowed) redirect("/not-allowed");
    throw error;
  }
}
