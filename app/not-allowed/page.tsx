import type { Metadata } from "next";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { requireActor } from "@/lib/access/session";

export const metadata: Metadata = { title: "Not for this account" };

export default async function NotAllowedPage() {
  const actor = await requireActor("/");
  return (
    <>
      <PageHead title="This page is not for your account" />
      <p>
        You are signed in as {actor.name}, {actor.role}. What each role may see and do stands in{" "}
        <Link href="/rules#roles">Rules</Link>; the clinic’s administrator can change a role.
      </p>
      <p>
        <Link href="/">Go to your first page</Link>
      </p>
    </>
  );
}
