import type { ReactNode } from "react";
import { Link } from "@/app/_parts/link";
import type { AdjustmentEffect } from "@/lib/fit/adjustment-effects";
import type { StepSideEffect } from "@/lib/fit/series";
import type { SocketState } from "@/lib/fit/words";
import { EffectWords, SideEffects } from "./effect-words";
import styles from "./socket-line.module.css";

export interface LineAdjustment {
  id: string;
  /** "relief 2 mm, lateral, distal third" (see `adjustmentWords`). */
  what: string;
  /** "slips when lifted" */
  reason: string;
  /** What came of it, once the socket that it led to was tried. */
  effect?: AdjustmentEffect | undefined;
}

export interface SocketBead {
  id: string;
  number: number;
  href: string;
  state: SocketState;
  /** Since when, or when: "14 Sep". */
  date?: string | undefined;
  /** Where it was fitted: "on video". */
  place?: string | undefined;
  /** "2 days late" */
  late?: string | undefined;
  /** 0–10, as last said. */
  comfort?: number | undefined;
  /** The hardest mark in words: "firm". */
  hardestMark?: string | undefined;
  /** Under load: "14.0 mm". */
  displacement?: string | undefined;
  /** The number of the socket it was made from, where that is not the one before. */
  madeFrom?: number | undefined;
  /** What separates it from the one it was made from. */
  adjustments: readonly LineAdjustment[];
  /** Where the limb changed by more than the tape can miss since that one was worn: by how much, in a sentence. */
  limbChanged?: string | undefined;
  /** Marks that came of them elsewhere, once it was tried. */
  sideEffects?: readonly StepSideEffect[] | undefined;
}

export interface SocketLineProps {
  /** Lines under the first bead: "31 Aug", "545 mL ± 10". Empty where the limb was not measured. */
  limb: readonly string[];
  sockets: readonly SocketBead[];
  /** What comes after the last socket, where something is planned: "Plan socket 4". */
  gap?: { label: string; href: string } | undefined;
  /** Small adjustments that are carried into the definitive socket. */
  carried: readonly LineAdjustment[];
  /** Lines under the last bead: "after release", "not begun". */
  definitive: readonly string[];
  /** Lets two to four beads be chosen and opened side by side by a GET form to this address (`?socket=ID&socket=ID`). */
  compare?: { href: string; chosen: readonly string[] } | undefined;
}

/** The series like beads on a line, with what leads from one socket to the next standing on the line between them. */
export function SocketLine({ compare, ...props }: SocketLineProps) {
  if (!compare) return <Line {...props} chosen={undefined} />;
  return (
    <form action={compare.href}>
      <Line {...props} chosen={compare.chosen} />
      <p className={styles.compare}>
        <button type="submit" className="quiet">
          Compare side by side
        </button>
        <span className="soft not-on-paper">Choose two to four sockets.</span>
      </p>
    </form>
  );
}

function Line({
  limb,
  sockets,
  gap,
  carried,
  definitive,
  chosen,
}: Omit<SocketLineProps, "compare"> & { chosen: readonly string[] | undefined }) {
  const last = sockets.at(-1);
  return (
    <ol className={styles.line}>
      <Cell
        ring="⌀"
        open
        title="Limb measured"
        lines={limb.length > 0 ? limb : ["not yet"]}
        leads={sockets[0]?.adjustments}
        leadsTo="Into socket 1"
      />
      {sockets.map((socket, index) => {
        const next = sockets[index + 1];
        return (
          <Cell
            key={socket.id}
            ring={String(socket.number)}
            open={socket.state === "planned"}
            title={<Link href={socket.href}>Socket {socket.number}</Link>}
            lines={[stateWords(socket)]}
            branch={socket.madeFrom}
            nextBranches={next?.madeFrom !== undefined}
            late={socket.late}
            leads={next ? next.adjustments : socket === last && !gap ? carried : []}
            leadsTo={
              next
                ? `From socket ${next.madeFrom ?? socket.number} to socket ${next.number}`
                : "Carried into the definitive socket"
            }
            leadsHead={next?.madeFrom === undefined ? undefined : `From socket ${next.madeFrom} to socket ${next.number}:`}
            limbChanged={next?.limbChanged}
            sideEffects={next?.sideEffects}
            carriedAlong={!next}
          >
            <Found socket={socket} />
            {chosen && (
              <label className={styles.pick}>
                <input type="checkbox" name="socket" value={socket.id} defaultChecked={chosen.includes(socket.id)} />
                compare<span className="heard"> socket {socket.number}</span>
              </label>
            )}
          </Cell>
        );
      })}
      {gap && (
        <Cell
          ring="+"
          open
          title={<Link href={gap.href}>{gap.label}</Link>}
          lines={[]}
          leads={carried}
          leadsTo="Carried into the definitive socket"
          carriedAlong
        />
      )}
      <Cell ring="◌" open title="Definitive" lines={definitive} />
    </ol>
  );
}

interface CellProps {
  ring: string;
  /** An open ring: not made yet, or no socket. */
  open?: boolean;
  title: ReactNode;
  lines: readonly string[];
  /** The number of an older socket that it was made from: the line does not lead here from the one before. */
  branch?: number | undefined;
  nextBranches?: boolean;
  late?: string | undefined;
  children?: ReactNode;
  leads?: readonly LineAdjustment[] | undefined;
  leadsTo?: string;
  /** Seen above what leads on, where that does not start at this bead. */
  leadsHead?: string | undefined;
  limbChanged?: string | undefined;
  sideEffects?: readonly StepSideEffect[] | undefined;
  carriedAlong?: boolean;
}

/** A bead, and what stands on the line after it. */
function Cell({ ring, open = false, title, lines, branch, nextBranches = false, late, children, ...after }: CellProps) {
  const { leads = [], leadsTo, leadsHead, limbChanged, sideEffects = [], carriedAlong = false } = after;
  const wordsOf = (adjustmentId: string) => leads.find(({ id }) => id === adjustmentId)?.what ?? "another";
  return (
    <li className={[styles.cell, leads.length > 0 && styles.leading, nextBranches && styles.broken].filter(Boolean).join(" ")}>
      <span className={`${styles.ring} ${open ? styles.open : ""}`} aria-hidden="true">
        {ring}
      </span>
      <div className={styles.bead}>
        <strong>{title}</strong>
        {lines.map((line) => (
          <small key={line}>{line}</small>
        ))}
        {branch !== undefined && (
          <span className={styles.branch}>
            <svg viewBox="0 0 20 16" aria-hidden="true">
              <path d="M3 1v6a4 4 0 0 0 4 4h9M12 6.5l4.5 4.5-4.5 4.5" />
            </svg>
            made from socket {branch}
          </span>
        )}
        {late && <span className={styles.late}>{late}</span>}
        {children}
      </div>
      {leads.length > 0 && (
        <div className={styles.leads}>
          {leadsHead && <small aria-hidden="true">{leadsHead}</small>}
          {limbChanged && <small className={styles.limbChanged}>{limbChanged}</small>}
          <ul aria-label={leadsTo}>
            {leads.map((adjustment) => (
              <Lead key={adjustment.id} adjustment={adjustment} carried={carriedAlong} />
            ))}
          </ul>
          <SideEffects of={sideEffects} wordsOf={wordsOf} />
        </div>
      )}
    </li>
  );
}

function Lead({ adjustment: { what, reason, effect }, carried }: { adjustment: LineAdjustment; carried: boolean }) {
  return (
    <li>
      <strong>{carried ? `carried: ${what}` : what}</strong>
      <small>for: {reason}</small>
      {carried && <small>to be made in the definitive socket</small>}
      {effect && <EffectWords effect={effect} />}
    </li>
  );
}

/** Comfort, hardest mark, drop: nothing of it before a fitting. */
function Found({ socket: { comfort, hardestMark, displacement } }: { socket: SocketBead }) {
  if (comfort === undefined && hardestMark === undefined && displacement === undefined) return null;
  return (
    <dl className={styles.found}>
      <dt>comfort</dt>
      <dd>
        {comfort === undefined ? (
          "not asked"
        ) : (
          <>
            {comfort}
            <span className={styles.of}> of 10</span>
          </>
        )}
      </dd>
      <dt>marks</dt>
      <dd>{hardestMark ?? "not looked"}</dd>
      <dt>drop</dt>
      <dd>{displacement ?? "not measured"}</dd>
    </dl>
  );
}

function stateWords({ state, date, place }: SocketBead): string {
  const lasting = state === "planned" || state === "being made" || state === "at hand";
  return [date ? `${state} ${lasting ? "since " : ""}${date}` : state, place].filter(Boolean).join(", ");
}
