import type { ReactNode } from "react";
import { Link } from "@/app/_parts/link";
import { formatNumber } from "@/app/_parts/numbers";
import { StateMark } from "@/app/_parts/state-mark";
import type { Found } from "./found";
import styles from "./found-list.module.css";
import type { Offer } from "./found-offers";

interface FoundListProps {
  found: readonly Found[];
  /** How an offer is taken up here: a button, a box to tick, nothing. */
  take: (offer: Offer) => ReactNode;
}

/** So many of what is considered stand open; the most particular come first. */
const open = 2;

/** Each finding, folded, with the record that it is from, what practitioners consider, the cautions, and when to stop and refer. What forbids stands open and offers nothing. */
export function FoundList({ found, take }: FoundListProps) {
  return (
    <ol className={styles.list}>
      {found.map(({ id, words, forbids, early, from, considered }) => (
        <li key={id} className={forbids ? styles.forbids : undefined}>
          <details open={forbids}>
            <summary>
              {forbids ? (
                <StateMark state="forbids" wrap>
                  {words}
                </StateMark>
              ) : (
                <strong>{words}</strong>
              )}
              <small className={styles.from}>{from[0]?.record}</small>
            </summary>
            <Records from={from} />
            {early ? (
              <LookAgain early={early} />
            ) : (
              forbids && (
                <p className={styles.stop}>
                  <strong>Leave the socket off and ask the physician first.</strong> No adjustment is offered for this.
                </p>
              )
            )}
            {considered.slice(0, open).map((row) => (
              <Row key={row.id} row={row} forbids={forbids} take={take} />
            ))}
            {considered.length > open && (
              <details>
                <summary>
                  {considered.length - open} more<span className="heard"> considered for {words}</span>
                </summary>
                {considered.slice(open).map((row) => (
                  <Row key={row.id} row={row} forbids={forbids} take={take} />
                ))}
              </details>
            )}
          </details>
        </li>
      ))}
    </ol>
  );
}

/** Where to read it, and what other records say of the same. */
function Records({ from: [first, ...others] }: { from: Found["from"] }) {
  return (
    <p className={styles.records}>
      {first && (
        <Link href={first.href}>
          Read the record<span className="heard">: {first.record}</span>
        </Link>
      )}
      {others.map(({ record, href, words }) => (
        <span key={href}>
          Also: <Link href={href}>{record}</Link>, {words}
        </span>
      ))}
    </p>
  );
}

/** It forbids; and the one step that may show otherwise stands beside it. */
function LookAgain({ early: { seenAtMin, untilMin, href } }: { early: NonNullable<Found["early"]> }) {
  return (
    <>
      <p className={styles.stop}>
        <strong>Leave the socket off.</strong> This was seen {formatNumber(seenAtMin, 0)} minutes after doffing. It counts as not
        blanching, and forbids, until a look up to {formatNumber(untilMin, 0)} minutes after doffing shows that it blanches or is
        gone. Ask the physician if it does not, or if that time has passed. No adjustment is offered for this.
      </p>
      <Link className="button quiet" href={href}>
        Look at the skin again
      </Link>
    </>
  );
}

function Row({
  row: { heading, offers, weigh, cautions, stopWhen },
  forbids,
  take,
}: {
  row: Found["considered"][number];
  forbids: boolean;
  take: FoundListProps["take"];
}) {
  const stop = <p className={styles.stop}>{stopWhen}</p>;
  return (
    <div className={styles.row}>
      <p className={styles.heading}>
        {heading} <small>common practice, no source</small>
      </p>
      {forbids && stop}
      {offers.length > 0 && (
        <ul className={styles.offers}>
          {offers.map((offer) => (
            <li key={offer.id}>
              <span>
                <strong>{offer.kind}</strong> {offer.what}
              </span>
              {take(offer)}
            </li>
          ))}
        </ul>
      )}
      {!forbids && offers.length === 0 && <p className="soft">Nothing is changed for this.</p>}
      <details>
        <summary>
          What to weigh, and cautions<span className="heard">: {heading}</span>
        </summary>
        <ul>
          {[...weigh, ...cautions].map((line) => (
            <li key={line}>{line}</li>
          ))}
        </ul>
      </details>
      {!forbids && stop}
    </div>
  );
}
