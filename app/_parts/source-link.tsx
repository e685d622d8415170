import { Link } from "@/app/_parts/link";

/** The kind of each source by its id: "published", "common practice", "clinic setting", "from memory". */
export type SourceKinds = Readonly<Record<string, string>>;

/** Where a limit comes from, one press away: its place on the page of rules. */
export function SourceLink({ source, kinds }: { source: string; kinds: SourceKinds }) {
  const kind = kinds[source] ?? "source";
  return <Link href={`/rules#${source}`}>{kind === "published" ? "published source" : kind}</Link>;
}
