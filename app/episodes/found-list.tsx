import type { ReactNode } from "react";
import { StateMark } from "@/app/_parts/state-mark";
import type { Found, Offer } from "./found";
import styles from "./found-list.module.css";

interface FoundListProps {
  found: readonly Found[];
  /** How an offer is taken up here: a button, a box to tick, nothing. */
  take: (offer: Offer) => ReactNode;
}

/** So many of what is considered stand open; the most particular come first. */
const open = 2;

/** Each finding, folded, with what practitioners consider, the cautions, and when to stop and refer. What forbids stands open and offers nothing. */
export function FoundList({ found, take }: FoundListProps) {
  return (
    <ol className={styles.list}>
      {found.map(({ id, words, forbids, considered }) => (
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
            </summary>
            {forbids && (
              <p className={styles.stop}>
                <strong>Leave the socket off and ask the physician first.</strong> No adjustment is offered for this.
              </p>
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
