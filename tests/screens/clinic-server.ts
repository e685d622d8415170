import { freePort, type RunningServer, startServer } from "../../lib/setup/server.mjs";
import { secret } from "./prepared";

export type ClinicServer = RunningServer & { log(): string };

interface Manner {
  /** A free port of this machine where none is named. */
  port?: number;
  /** By how much its clock is ahead of the machine's; only for an invented clinic. */
  clockOffsetMs?: number;
}

/** Serves the built site from the database in `file`. */
export async function serveDatabase(file: string, { port: wantedPort, clockOffsetMs = 0 }: Manner = {}): Promise<ClinicServer> {
  const port = wantedPort ?? (await freePort());
  let said = "";
  const server = await startServer({
    place: { host: "127.0.0.1", port, address: `http://localhost:${port}` },
    file,
    secret,
    clockOffsetMs,
    onOutput: (text) => {
      said += text;
    },
  });
  return { ...server, log: () => said };
}
