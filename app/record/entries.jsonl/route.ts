import { jsonLine } from "@/lib/records/export-record";
import { exportAs } from "../export";

/** What was looked for, each entry exactly as it is hashed, with its digest. */
export const GET = (request: Request): Promise<Response> =>
  exportAs(
    { ending: "jsonl", type: "application/x-ndjson", begin: "", text: (entries) => entries.map(jsonLine).join("") },
    request,
  );
