"use client";

import { type RefObject, useEffect, useState } from "react";
import { useField } from "./form-context";
import { isNumber, typedNumber } from "./mark-draft";

/** Minutes after doffing as they stand in another field of the same form: a mark that is there late has a higher grade. */
export function useLookedAt(
  minutes: { name: string; first?: string },
  within: RefObject<HTMLElement | null>,
): number | undefined {
  const { value } = useField(minutes.name, minutes.first);
  const [typed, setTyped] = useState<string | null>(null);
  useEffect(() => {
    const form = within.current?.closest("form");
    if (!form) return;
    const read = ({ target }: Event) => {
      if (target instanceof HTMLInputElement && target.name === minutes.name) setTyped(target.value);
    };
    form.addEventListener("input", read);
    return () => form.removeEventListener("input", read);
  }, [minutes.name, within]);
  const lookedAtMin = typedNumber(typed ?? value);
  return isNumber(lookedAtMin) && lookedAtMin >= 0 ? lookedAtMin : undefined;
}
