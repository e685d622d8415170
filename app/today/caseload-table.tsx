"use client";

import {
  columnFilteringFeature,
  createColumnHelper,
  createFilteredRowModel,
  createSortedRowModel,
  filterFn_equalsString,
  filterFn_includesString,
  rowSortingFeature,
  sortFn_alphanumeric,
  sortFn_basic,
  tableFeatures,
  useTable,
} from "@tanstack/react-table";
import { shortDay } from "@/app/_parts/dates";
import { Link } from "@/app/_parts/link";
import { type MarkedState, StateMark } from "@/app/_parts/state-mark";
import styles from "./today.module.css";

export interface CaseloadTableRow {
  id: string;
  name: string;
  number: string;
  limb: string;
  stage: string;
  sockets: number;
  decision: string;
  dueOn: string | null;
  lastSeenOn: string | null;
  prosthetist: string;
}

const features = tableFeatures({
  rowSortingFeature,
  columnFilteringFeature,
  sortedRowModel: createSortedRowModel(),
  filteredRowModel: createFilteredRowModel(),
  sortFns: { alphanumeric: sortFn_alphanumeric, basic: sortFn_basic },
  filterFns: { includesString: filterFn_includesString, equalsString: filterFn_equalsString },
});

const column = createColumnHelper<typeof features, CaseloadTableRow>();
const columns = column.columns([
  column.accessor("name", {
    header: "Wearer",
    sortFn: "alphanumeric",
    filterFn: "includesString",
    cell: ({ row }) => <Link href={`/episodes/${row.original.id}`}>{row.original.name}</Link>,
  }),
  column.accessor("number", { header: "Number", sortFn: "alphanumeric" }),
  column.accessor("limb", { header: "Limb", sortFn: "alphanumeric" }),
  column.accessor("stage", { header: "Stage", sortFn: "alphanumeric", filterFn: "equalsString" }),
  column.accessor("sockets", { header: "Sockets", sortFn: "basic" }),
  column.accessor("decision", {
    header: "Decision",
    sortFn: "alphanumeric",
    filterFn: "equalsString",
    cell: ({ getValue }) => <StateMark state={getValue() as MarkedState} />, // the column holds only decisions
  }),
  column.accessor("dueOn", {
    header: "Next step due",
    sortFn: "basic",
    cell: ({ getValue }) => (getValue() ? shortDay(getValue() ?? "") : ""),
  }),
  column.accessor("lastSeenOn", {
    header: "Last seen",
    sortFn: "basic",
    cell: ({ getValue }) => (getValue() ? shortDay(getValue() ?? "") : "not yet"),
  }),
]);

/** Everyone in one table: sorted and narrowed here, with the choice kept in the address. */
export function CaseloadTable({
  rows,
  first,
}: {
  rows: CaseloadTableRow[];
  today: string;
  first: { stage: string; sort: string };
}) {
  const [sortId = "", direction] = first.sort.split(".");
  const table = useTable({
    features,
    columns,
    data: rows,
    getRowId: (row) => row.id,
    initialState: {
      sorting: sortId === "" ? [] : [{ id: sortId, desc: direction === "down" }],
      columnFilters: first.stage === "" ? [] : [{ id: "stage", value: first.stage }],
    },
  });
  const filterOf = (id: string) => String(table.state.columnFilters.find((filter) => filter.id === id)?.value ?? "");
  const narrow = (id: string, value: string) => {
    table.getColumn(id)?.setFilterValue(value === "" ? undefined : value);
    if (id === "stage") keepInAddress("stage", value);
  };
  const found = table.getRowModel().rows;
  return (
    <>
      <div className={styles.narrow}>
        <label>
          name
          <input type="search" value={filterOf("name")} onChange={(event) => narrow("name", event.target.value)} />
        </label>
        <Narrow
          label="stage"
          words={distinct(rows, "stage")}
          value={filterOf("stage")}
          onChange={(value) => narrow("stage", value)}
        />
        <Narrow
          label="decision"
          words={distinct(rows, "decision")}
          value={filterOf("decision")}
          onChange={(value) => narrow("decision", value)}
        />
        <span className="soft" role="status">
          {found.length} of {rows.length}
        </span>
      </div>
      <table className={styles.all}>
        <thead>
          {table.getHeaderGroups().map((group) => (
            <tr key={group.id}>
              {group.headers.map((header) => {
                const sorted = header.column.getIsSorted();
                return (
                  <th
                    key={header.id}
                    scope="col"
                    aria-sort={sorted === "asc" ? "ascending" : sorted === "desc" ? "descending" : undefined}
                  >
                    <button
                      type="button"
                      onClick={() => {
                        const down = sorted === "asc";
                        header.column.toggleSorting(down);
                        keepInAddress("sort", `${header.column.id}.${down ? "down" : "up"}`);
                      }}
                    >
                      <table.FlexRender header={header} />
                      <span aria-hidden="true">{sorted === "asc" ? " ↑" : sorted === "desc" ? " ↓" : ""}</span>
                    </button>
                  </th>
                );
              })}
            </tr>
          ))}
        </thead>
        <tbody>
          {found.map((row) => (
            <tr key={row.id}>
              {row.getAllCells().map((cell) => (
                <td key={cell.id}>
                  <table.FlexRender cell={cell} />
                </td>
              ))}
            </tr>
          ))}
        </tbody>
      </table>
    </>
  );
}

function Narrow({
  label,
  words,
  value,
  onChange,
}: {
  label: string;
  words: string[];
  value: string;
  onChange: (value: string) => void;
}) {
  return (
    <label>
      {label}
      <select value={value} onChange={(event) => onChange(event.target.value)}>
        <option value="">all</option>
        {words.map((word) => (
          <option key={word}>{word}</option>
        ))}
      </select>
    </label>
  );
}

const distinct = (rows: CaseloadTableRow[], field: "stage" | "decision"): string[] =>
  [...new Set(rows.map((row) => row[field]))].sort();

/** So that the view can be shared and reloaded. */
function keepInAddress(name: string, value: string): void {
  const address = new URL(window.location.href);
  if (value === "") address.searchParams.delete(name);
  else address.searchParams.set(name, value);
  window.history.replaceState(null, "", address);
}
