import { dayAt, shortDay } from "@/app/_parts/dates";
import { counted, formatNumber, formatQuantity } from "@/app/_parts/numbers";
import { StateMark } from "@/app/_parts/state-mark";
import type { ComparedCell, ComparedRow } from "@/lib/fit";
import type { Comparison, SocketColumn } from "./comparison";
import styles from "./side-by-side.module.css";
import { differenceWords, measureWords, outcomeWords, valueWords } from "./values";

/** Measures as rows, sockets as columns: those that differ first, the rest folded. */
export function Measures({ comparison, timeZone }: { comparison: Comparison; timeZone: string }) {
  const rows = comparison.rows.filter(({ id }) => id !== "index");
  const ofStanding = (standing: ComparedRow["standing"]) => rows.filter((row) => row.standing === standing);
  const [differs, alike, rest] = [ofStanding("differs"), ofStanding("alike"), ofStanding("not compared")];
  const table = (caption: string, shown: readonly ComparedRow[]) => (
    <MeasureTable caption={caption} rows={shown} comparison={comparison} timeZone={timeZone} />
  );
  return (
    <section aria-labelledby="measures">
      <h2 id="measures">What was found with each</h2>
      <p className="soft">
        Each is held against the {comparison.against === "first" ? "first of them" : "one before it"}. Better and worse are said
        only of a difference that is more than its error.
      </p>
      {differs.length > 0 ? (
        table("Measures that differ", differs)
      ) : (
        <>
          <p>No measure differs by more than its error.</p>
          {table("How each was tried", [])}
        </>
      )}
      {alike.length > 0 && (
        <details className={`${styles.folded} not-on-paper`}>
          <summary>{counted(alike.length, "measure")} within measuring error</summary>
          {table("Measures within measuring error", alike)}
        </details>
      )}
      {rest.length > 0 && (
        <details className={`${styles.folded} not-on-paper`}>
          <summary>{counted(rest.length, "measure")} that could not be compared</summary>
          {table("Measures that could not be compared", rest)}
        </details>
      )}
      <OnPaper head="Within measuring error" rows={alike} comparison={comparison} />
      <OnPaper head="Not compared" rows={rest} comparison={comparison} />
    </section>
  );
}

/** What is folded on the screen, in one paragraph on paper, so that a comparison is one page. */
function OnPaper({
  head,
  rows,
  comparison: { columns },
}: {
  head: string;
  rows: readonly ComparedRow[];
  comparison: Comparison;
}) {
  if (rows.length === 0) return null;
  const values = (row: ComparedRow) =>
    row.cells.map((cell, column) => {
      const findings = columns[column]?.findings;
      return (findings && valueWords(row, cell, findings)) ?? "not measured";
    });
  const said = (row: ComparedRow) => {
    const all = values(row);
    return `${row.measure} ${all.every((value) => value === all[0]) ? all[0] : all.join(" → ")}`;
  };
  return (
    <p className={styles.onPaper}>
      {head}: {rows.map(said).join("; ")}.
    </p>
  );
}

interface TableProps {
  caption: string;
  rows: readonly ComparedRow[];
  comparison: Comparison;
  timeZone: string;
}

function MeasureTable({ caption, rows, comparison: { sockets, columns }, timeZone }: TableProps) {
  return (
    <table className={`${styles.measures} ${styles.stacking}`}>
      <caption className="heard">{caption}</caption>
      <thead>
        <tr>
          <th scope="col">
            <span className="heard">measure</span>
          </th>
          {sockets.map((socket) => (
            <th key={socket.socketId} scope="col">
              <strong>{socket.name}</strong>
              <Tried socket={socket} timeZone={timeZone} />
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {rows.map((row) => (
          <tr key={row.id}>
            <th scope="row">{measureWords(row)}</th>
            {row.cells.map((cell, index) => {
              const [socket, column] = [sockets[index], columns[index]];
              if (!socket || !column) return null;
              return (
                <td key={socket.socketId}>
                  <span className={styles.narrow}>{socket.name}: </span>
                  <span className={styles.value}>
                    {valueWords(row, cell, column.findings) ?? <span className="soft">not measured</span>}
                  </span>
                  <Outcome cell={cell} from={sockets[cell.against?.column ?? -1]} isFolded={row.standing === "not compared"} />
                </td>
              );
            })}
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** When, where and how long: what marks and comfort hang on besides the socket. */
function Tried({ socket: { tried }, timeZone }: { socket: SocketColumn; timeZone: string }) {
  const { fitting, trial } = tried;
  if (!fitting && !trial) return <small>never worn</small>;
  const load = trial?.loadKg === undefined ? "" : `, ${formatQuantity({ value: trial.loadKg, unit: "kg" })}`;
  const at = trial?.loadDistanceMm === undefined ? "" : ` at ${formatNumber(trial.loadDistanceMm, 0)}\u00a0mm`;
  return (
    <>
      {fitting && (
        <small>
          fitted {shortDay(dayAt(fitting.at, timeZone))}, {placeWords[fitting.place] ?? fitting.place}
        </small>
      )}
      {trial && (
        <small>
          trial {shortDay(dayAt(trial.beganAt, timeZone))}, {formatNumber(trial.wornMinutes, 0)} of {trial.plannedMinutes}
          {"\u00a0min"}
          {load}
          {at}
        </small>
      )}
    </>
  );
}

const placeWords: Record<string, string> = { clinic: "in clinic", home: "at home", video: "on video" };

interface OutcomeProps {
  cell: ComparedCell;
  from: SocketColumn | undefined;
  /** The reason is said where nothing could be compared; elsewhere the value says it. */
  isFolded: boolean;
}

function Outcome({ cell: { against }, from, isFolded }: OutcomeProps) {
  if (!against || !from) return null;
  const { row } = against;
  if (row.outcome === "not measured" && !isFolded) return <StateMark state="not measured">not compared</StateMark>;
  const state = row.difference === 0 ? "no difference" : row.outcome;
  return (
    <>
      {row.outcome !== "not measured" && (
        <StateMark state={state} wrap>
          {outcomeWords(row)}
          <span className="heard"> than socket {from.number}</span>
        </StateMark>
      )}
      <small>{row.outcome === "not measured" ? whyNot(row.why, from.number) : differenceWords(row)}</small>
    </>
  );
}

/** "The first" and "the second" are columns here. */
const whyNot = (why: string, from: number): string =>
  why.replace("the first socket", `socket ${from}`).replace("the second socket", "this one").replace("either socket", "either");
