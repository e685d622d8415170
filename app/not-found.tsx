import Link from "next/link";

export default function NothingHere() {
  return (
    <>
      <h1>There is nothing at this address</h1>
      <p>The record may have been struck out, or the address is not whole. Nothing was lost.</p>
      <p>
        <Link href="/">Go to your first page</Link>
      </p>
    </>
  );
}
