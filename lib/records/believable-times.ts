/** When can what is recorded have happened? */

/** Forms give times to the minute: what was set a few seconds ago must not lie in their future. */
export const wholeMinute = (at: Date): number => Math.floor(at.getTime() / 60_000) * 60_000;

/** A few minutes are left for clocks that differ. */
export const isAhead = (at: Date, now: Date): boolean => at.getTime() > now.getTime() + 5 * 60_000;

/** Nobody wore a socket before it was specified. */
export const isBeforeSocket = (at: Date, socket: { specifiedAt: Date }): boolean =>
  at.getTime() < wholeMinute(socket.specifiedAt);

/**
 * What a device sends of a wear trial is stored whatever its time. A time that cannot have been so proves nothing good,
 * neither when it came nor once that time has come.
 */
export const isMisdated = (event: { at: Date; receivedAt: Date }, socket: { specifiedAt: Date } | undefined): boolean =>
  isAhead(event.at, event.receivedAt) || (socket !== undefined && isBeforeSocket(event.at, socket));
