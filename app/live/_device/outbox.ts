/** Sends what the device keeps, in the order in which it was pressed, as often as it takes. */
import type { Became } from "./live-trial";
import type { Told } from "./server";
import type { KeptItem } from "./store";

export interface Sending {
  /** What is still to be sent, in order. */
  items: readonly KeptItem[];
  send: (items: readonly KeptItem[]) => Promise<Told<{ received: Became[] }>>;
  /** The server has said what became of these. */
  heard: (answers: readonly Became[]) => Promise<void>;
}

const mostAtOnce = 100;

export type SendState = "all sent" | "offline" | "signed out" | "refused";

/**
 * Sends until all is sent or the first failure. A batch that the server cannot take as a whole is halved, so that one
 * thing that is wrong does not hold up the others.
 */
export async function sendAll({ items, send, heard }: Sending): Promise<SendState> {
  let left = [...items];
  let most = mostAtOnce;
  let refused = false;
  while (left.length > 0) {
    const batch = nextBatch(left, most);
    const told = await send(batch);
    if ("answer" in told) {
      await heard(told.answer.received);
      const named = new Set(told.answer.received.map(({ id }) => id));
      const before = left.length;
      left = left.filter(({ id }) => !named.has(id));
      if (left.length === before) return "refused";
      continue;
    }
    if (told.failed !== "refused") return told.failed;
    if (batch.length > 1) {
      most = Math.ceil(batch.length / 2);
      continue;
    }
    // It stays on the device, and is tried again with the next round.
    refused = true;
    left = left.filter((item) => item !== batch[0]);
  }
  return refused ? "refused" : "all sent";
}

/** Events that one clock gave their times go together; a look goes alone. */
function nextBatch(left: readonly KeptItem[], most: number): KeptItem[] {
  const [first] = left;
  if (!first || first.what === "look") return left.slice(0, 1);
  const until = left.findIndex(({ what, correctedMs }) => what === "look" || correctedMs !== first.correctedMs);
  return left.slice(0, Math.min(most, until === -1 ? left.length : until));
}
