import type { Metadata } from "next";
import { show } from "@/app/_forms/show";
import { Empty } from "@/app/_parts/empty";
import { Link } from "@/app/_parts/link";
import { PageHead } from "@/app/_parts/page-head";
import { requireActor } from "@/lib/access/session";
import { clinicSettings } from "@/lib/records/clinic";
import { InputRefused } from "@/lib/records/refusals";
import { seeRecord, seeRecordChoices } from "@/lib/records/see-record";
import { type AddressParts, type Asked, asked, queryOf } from "./address";
import { ChainCheck } from "./chain-check";
import { Entries } from "./entries";
import styles from "./record.module.css";
import { SearchForm } from "./search-form";

export const metadata: Metadata = { title: "Record" };

export default async function RecordPage({ searchParams }: { searchParams: Promise<AddressParts> }) {
  const parts = await searchParams;
  const search = asked(parts);
  const actor = await requireActor(`/record${queryOf(search)}`);
  const [choices, { found, wrong }, clinic] = await Promise.all([
    show(seeRecordChoices(actor, null)),
    find(seeRecord(actor, { ...search, page: parts.page })),
    clinicSettings(),
  ]);
  const timeZone = clinic?.timeZone ?? "UTC";
  return (
    <>
      <PageHead
        title="Record"
        about="Who did what, when. Entries are only ever added; each carries the digest of the one before."
      >
        <Link className="button quiet" href={`/record${queryOf(search, { verify: "yes" })}`}>
          Verify the chain
        </Link>
      </PageHead>
      {parts.verify === "yes" && <ChainCheck actor={actor} total={choices.total} timeZone={timeZone} />}
      <SearchForm asked={search} wrong={wrong} people={choices.people} kinds={choices.kinds} />
      {found ? (
        <Found found={found} search={search} timeZone={timeZone} />
      ) : (
        <p role="alert">Nothing was looked for yet: put right the field that is marked.</p>
      )}
    </>
  );
}

type Seen = Awaited<ReturnType<typeof seeRecord>>;

/** What was found, or what to do about each field that is wrong. */
const find = (reading: Promise<Seen>): Promise<{ found: Seen | null; wrong: Record<string, string> }> =>
  show(
    reading
      .then((found) => ({ found, wrong: {} }))
      .catch((error: unknown) => {
        if (error instanceof InputRefused) return { found: null, wrong: error.fields };
        throw error;
      }),
  );

interface FoundProps {
  found: Seen;
  search: Asked;
  timeZone: string;
}

function Found({
  found: {
    entries,
    count,
    pages,
    wearerIds,
    search: { page },
  },
  search,
  timeZone,
}: FoundProps) {
  const pageHref = (to: number) => `/record${queryOf(search, { page: String(to) })}`;
  return (
    <>
      <div className={styles.found}>
        <p>
          {count} {count === 1 ? "entry" : "entries"}
          {wearerIds && `, of ${wearerIds.length} ${wearerIds.length === 1 ? "wearer" : "wearers"}`}
        </p>
        {count > 0 && (
          <p>
            {/* A file, not a page: it is not fetched before someone asks for it. */}
            <a href={`/record/entries.csv${queryOf(search)}`}>For a spreadsheet (CSV)</a>
            <a href={`/record/entries.jsonl${queryOf(search)}`}>For checking the digests (JSON lines)</a>
          </p>
        )}
      </div>
      {entries.length === 0 ? (
        <Empty title="Nothing found">
          {wearerIds?.length === 0
            ? "No wearer has this name, clinic number or id."
            : "No entry is of this person, wearer, record and time at once. Leave a field free to find more."}
        </Empty>
      ) : (
        <Entries entries={entries} timeZone={timeZone} />
      )}
      {pages > 1 && (
        <nav aria-label="Pages" className={styles.pages}>
          {page > 1 && <Link href={pageHref(page - 1)}>Newer</Link>}
          <span>
            {page} of {pages}
          </span>
          {page < pages && <Link href={pageHref(page + 1)}>Older</Link>}
        </nav>
      )}
    </>
  );
}
