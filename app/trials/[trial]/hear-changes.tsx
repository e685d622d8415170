"use client";

import { useRouter } from "next/navigation";
import { useEffect } from "react";

/** Several changes that come together are shown at once. */
const restMs = 300;

/** Shows what a phone elsewhere sends, as it comes. What is being typed on the page stays. */
export function HearChanges({ trialId }: { trialId: string }) {
  const router = useRouter();
  useEffect(() => {
    const source = new EventSource(`/trials/${trialId}/changes`);
    let timer: ReturnType<typeof setTimeout> | undefined;
    source.addEventListener("changed", () => {
      clearTimeout(timer);
      timer = setTimeout(() => router.refresh(), restMs);
    });
    return () => {
      clearTimeout(timer);
      source.close();
    };
  }, [trialId, router]);
  return null;
}
