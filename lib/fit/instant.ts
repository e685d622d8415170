/** Instants as milliseconds, so that times of any offset compare. */
import { FitInputError } from "./errors";

const withOffset = /^\d{4}-\d\d-\d\dT\d\d:\d\d(?::\d\d(?:\.\d+)?)?(?:Z|[+-]\d\d:\d\d)$/;

/**
 * Milliseconds since 1970 of an ISO 8601 instant with any offset.
 *
 * @param path of the field, for the error
 * @throws FitInputError where it is not an instant, or has no offset: its meaning would depend on the machine
 *
 * @example
 * instantMs("2026-10-06T00:00:00+14:00", "at") - instantMs("2026-10-05T10:00:00Z", "at")
 * // => 0
 */
export function instantMs(at: string, path: string): number {
  const ms = withOffset.test(at) ? Date.parse(at) : Number.NaN;
  if (Number.isNaN(ms)) throw new FitInputError(path, "expected an instant with its offset, as 2026-10-05T10:00:00Z");
  return ms;
}

/** The same instant written in UTC. */
export const instantOf = (ms: number): string => new Date(ms).toISOString();
