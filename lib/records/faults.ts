/** What nobody foresaw: logged under an id that the person sees. No health data goes into the log. */
import { randomUUID } from "node:crypto";
import pino from "pino";

const log = pino({ name: "fitting-ledger", level: process.env.LOG_LEVEL ?? "info" });

export function logFault(error: unknown, where: string): string {
  const faultId = randomUUID().slice(0, 8);
  const { name, stack } = error instanceof Error ? error : new Error("not an error object");
  // The message may quote what a person typed; the place in the code is enough to find the fault.
  log.error(
    {
      faultId,
      where,
      name,
      at: stack
        ?.split("\n")
        .filter((line) => line.trim().startsWith("at "))
        .slice(0, 8),
    },
    "fault",
  );
  return faultId;
}
