import { z } from "zod";
import type { Role } from "@/lib/access/roles";
import type { SocketState } from "@/lib/fit";
import { wholeMinute } from "./believable-times";
import { command, type Store } from "./command";
import { episodeForChange, refuseFuture } from "./episode-for-change";
import { choice, id, instant, maybeText, version } from "./input";
import { ChangedMeanwhile, InputRefused, NotAllowed, NotFound } from "./refusals";
import { addStateChange } from "./specify-socket";

/** From each state, where a socket may go by hand; fitted and released follow from a fitting and a release. */
const ways: Record<SocketState, readonly SocketState[]> = {
  planned: ["being made", "retired"],
  "being made": ["sent", "at hand", "planned", "retired"],
  sent: ["at hand", "being made", "retired"],
  "at hand": ["sent", "retired"],
  fitted: ["sent", "at hand", "retired"],
  retired: ["at hand"],
  released: [],
};

/** The bench makes and sends; whether a socket is done with is for those who see the wearer. */
const benchStates: readonly SocketState[] = ["planned", "being made", "sent"];
const benchWays = (from: SocketState): readonly SocketState[] =>
  // What is made under the same roof is handed over, not sent.
  from === "being made" ? [...benchStates, "at hand"] : benchStates;

export function waysOn(state: SocketState, role: Role): readonly SocketState[] {
  const open = ways[state];
  return role === "technician"
    ? benchStates.includes(state)
      ? open.filter((next) => benchWays(state).includes(next))
      : []
    : open;
}

/** Says where a socket is now: being made, sent, at hand, retired; who said so and when stays. */
export const moveSocket = command({
  permission: "move a socket",
  input: z.strictObject({
    socketId: id("The socket"),
    version,
    state: choice("the new state", ["planned", "being made", "sent", "at hand", "retired"]),
    at: instant("When this happened"),
    note: maybeText("The note", 400),
  }),
  run: async (store, { socketId, version, state, at, note }) => {
    const socket = await findSocket(store, socketId);
    const episode = await episodeForChange(store, socket.episodeId);
    if (socket.version !== version)
      throw new ChangedMeanwhile(`Socket ${socket.number}`, { state: socket.state, since: socket.stateSince }, socket.version);
    const from = socket.state as SocketState; // the column holds only what these commands write
    if (!ways[from].includes(state))
      throw new InputRefused({ state: `A socket that is ${from} cannot become ${state} this way.` });
    if (!waysOn(from, store.actor.role).includes(state))
      throw new NotAllowed(`set a socket that is ${from} to ${state}`, store.actor.role);
    refuseFuture(store, "at", at);
    if (at.getTime() < wholeMinute(socket.stateSince))
      throw new InputRefused({
        at: `It became ${from} only after this. Look at the date and the clock.`,
      });
    await setSocketState(store, { socket, state, at, note });
    await store.note({
      action: `socket ${socket.number} is ${state}`,
      kind: "check socket",
      id: socketId,
      wearerId: episode.wearerId,
      episodeId: socket.episodeId,
      before: { state: from, since: socket.stateSince },
      after: { state, since: at, note },
    });
    return { socketId, episodeId: socket.episodeId };
  },
});

export async function findSocket(store: Store, socketId: string) {
  const socket = await store.db.checkSocket.findUnique({ where: { id: socketId } });
  if (!socket) throw new NotFound("socket");
  return socket;
}

export async function setSocketState(
  store: Store,
  { socket, state, at, note }: { socket: { id: string }; state: SocketState; at: Date; note?: string | undefined },
): Promise<void> {
  await store.db.checkSocket.update({ where: { id: socket.id }, data: { state, stateSince: at, version: { increment: 1 } } });
  await addStateChange(store, socket.id, state, at, note);
}
