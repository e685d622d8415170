import { stringify } from "csv-stringify/sync";
import type { ExportedEntry } from "@/lib/records/export-record";
import { exportAs } from "../export";

const columns: { key: keyof ExportedEntry; header: string }[] = [
  { key: "position", header: "number" },
  { key: "at", header: "at, UTC" },
  { key: "actorName", header: "who" },
  { key: "actorRole", header: "role" },
  { key: "actorId", header: "account or link" },
  { key: "action", header: "what" },
  { key: "recordKind", header: "kind of record" },
  { key: "recordId", header: "record" },
  { key: "wearerId", header: "wearer" },
  { key: "episodeId", header: "episode" },
  { key: "before", header: "before" },
  { key: "after", header: "after" },
  { key: "digest", header: "digest" },
];

/** What was looked for, for a spreadsheet. */
export const GET = (request: Request): Promise<Response> =>
  exportAs(
    {
      ending: "csv",
      type: "text/csv",
      // A byte order mark, so that a spreadsheet reads the signs right.
      begin: `\uFEFF${stringify([columns.map(({ header }) => header)])}`,
      // What someone wrote must not be run as a formula.
      text: (entries) => stringify([...entries], { columns, escape_formulas: true }),
    },
    request,
  );
