/** What a wearer's own link is worth now. */
import type { LinkState } from "@/lib/access/actor";

/** After so many refused tries a link opens no more: a year of birth is quickly guessed. */
export const mostFailures = 10;

/** A device that was let in before the end may bring so long what it kept without a network. */
export const lateDays = 7;

const dayMs = 24 * 60 * 60_000;

export const linkEnd = (from: Date, days: number): Date => new Date(from.getTime() + days * dayMs);

interface LinkTimes {
  expiresAt: Date;
  withdrawnAt: Date | null;
}

export function linkStateAt({ expiresAt, withdrawnAt }: LinkTimes, at: Date): LinkState {
  if (withdrawnAt) return "withdrawn";
  return at.getTime() < expiresAt.getTime() ? "open" : "expired";
}

/** Whether a device that was let in before may still send. */
export const maySendLate = ({ expiresAt }: LinkTimes, at: Date): boolean => at.getTime() < linkEnd(expiresAt, lateDays).getTime();

/** Whether it lets a device in. */
export const opensAt = (link: LinkTimes & { failures: number }, at: Date): boolean =>
  linkStateAt(link, at) === "open" && link.failures < mostFailures;
