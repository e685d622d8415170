import { freePort, type RunningServer, startServer } from "../../lib/setup/server.mjs";
import { secret } from "./prepared";

export type ClinicServer = RunningServer & { log(): string };

/** Serves the built site from the database in `file`, on a free port of this machine where none is named. */
export async function serveDatabase(file: string, wantedPort?: number): Promise<ClinicServer> {
  const port = wantedPort ?? (await freePort());
  let said = "";
  const server = await startServer({
    place: { host: "127.0.0.1", port, address: `http://localhost:${port}` },
    file,
    secret,
    onOutput: (text) => {
      said += text;
    },
  });
  return { ...server, log: () => said };
}
