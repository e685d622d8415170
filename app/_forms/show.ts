import { notFound, redirect } from "next/navigation";
import { NotAllowed, NotFound } from "@/lib/records/refusals";

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
