"use client";

import { PageHead } from "./_parts/page-head";

/** A fault that nobody foresaw: what happened, what was kept, what to do. */
export default function Fault({ error, reset }: { error: Error & { digest?: string }; reset: () => void }) {
  return (
    <>
      <PageHead title="This page could not be shown" />
      <p>Something went wrong here. What was saved before is safe; nothing was half saved.</p>
      <p>
        <button type="button" onClick={reset}>
          Try again
        </button>
      </p>
      {error.digest && <p>If it stays, tell whoever runs this server the fault’s number: {error.digest}</p>}
    </>
  );
}
