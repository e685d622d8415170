import { Link } from "@/app/_parts/link";
import { PageHead } from "./_parts/page-head";

export default function NothingHere() {
  return (
    <>
      <PageHead title="There is nothing at this address" />
      <p>The record may have been struck out, or the address is not whole. Nothing was lost.</p>
      <p>
        <Link href="/">Go to your first page</Link>
      </p>
    </>
  );
}
