/** What is compared stands in the address. */
import type { Against } from "@/lib/fit";

export type AddressParts = Record<string, string | string[] | undefined>;

interface Asked {
  socketIds: string[];
  against: Against;
}

export function asked({ socket, against }: AddressParts): Asked {
  const socketIds = [socket ?? []].flat().filter((id) => id !== "");
  return { socketIds: [...new Set(socketIds)], against: against === "first" ? "first" : "before" };
}

/** @example queryOf({ socketIds: ["a", "b"], against: "before" }) // => "socket=a&socket=b" */
export const queryOf = ({ socketIds, against }: Asked): string =>
  new URLSearchParams([
    ...socketIds.map((id) => ["socket", id]),
    ...(against === "first" ? [["against", "first"]] : []),
  ]).toString();
