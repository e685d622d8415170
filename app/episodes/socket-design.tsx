"use client";

import { useState } from "react";
import { CheckBox, SelectField } from "@/app/_parts/fields";
import { Link } from "@/app/_parts/link";
import { useHasScripts } from "@/app/_parts/rows";
import { showQuantity, type Unit } from "@/lib/fit/units";
import { AdjustmentRows } from "./adjustment-rows";
import type { Design } from "./design";
import styles from "./design.module.css";
import { DimensionTable } from "./dimension-table";
import type { Found } from "./found";
import { FoundList } from "./found-list";
import type { Offer } from "./found-offers";
import { SocketProfile } from "./socket-profile";
import { type SocketDesignProps, useSocketDesign } from "./use-socket-design";

/** From findings to adjustments, from adjustments to inside dimensions: each step is shown as one types. */
export function SocketDesign(props: SocketDesignProps) {
  const { number, where, sockets, measurements, found, findings, first } = props;
  const now = useSocketDesign(props);
  const { design, previous, unit } = now;
  const hasScripts = useHasScripts();
  const [isChanging, setChanging] = useState(first.stations.length === 0);
  const isDerived = sockets.length > 0;
  return (
    <div
      className={styles.design}
      ref={(element) => takeEarly(element, now)}
      onInput={(event) => now.take(event.currentTarget.closest("form"))}
    >
      {isDerived && (
        <>
          <SelectField
            name="derivedFromId"
            label="Derived from"
            empty="no earlier socket"
            options={sockets.map(({ id, number: of }) => ({ value: id, label: `socket ${of}` }))}
            first={first.derivedFromId ?? ""}
          />
          <WhatWasFound
            found={found}
            previous={previous}
            isShown={previous === undefined || previous.id === first.derivedFromId}
            takeUp={now.takeUp}
          />
        </>
      )}
      <AdjustmentRows
        label={isDerived ? "Adjustments to the socket before" : "Adjustments to the plain shape"}
        hint="Each with its reason and, where it has one, the finding that it answers. Minus takes away: volume −2 percent, trim −3 mm."
        rows={now.adjustments}
        findings={findings}
        add={now.addAdjustment}
        remove={now.removeAdjustment}
      />
      {isDerived && !hasScripts && (
        <CheckBox
          name="workOut"
          label="Work the inside circumferences out from the adjustments"
          hint="From the socket it is derived from; what stands below is then not used. Volume, relief and build-up change them; trim lines and flares do not."
        />
      )}
      <div className={styles.shape}>
        <div className={styles.levels}>
          <DimensionTable
            levels={design.levels}
            shown={now.shown}
            type={now.type}
            takeProposed={now.follow}
            remove={now.removeLevel}
            stationsFrom={where.stationsFrom}
            previousNumber={previous?.number}
            number={number}
            isChanging={isChanging}
          />
          {hasScripts && (
            <>
              <p role="status" className={design.unexplained.length > 0 || design.problem ? styles.unexplained : "soft"}>
                {statusOf(design, { previousNumber: previous?.number, unit })}
              </p>
              <div className={styles.buttons}>
                {now.isAnyTyped && (
                  <button type="button" className="quiet" onClick={() => now.follow()}>
                    All as proposed
                  </button>
                )}
                <button
                  type="button"
                  className="quiet"
                  onClick={() => {
                    now.addLevel();
                    setChanging(true);
                  }}
                >
                  Add a level
                </button>
                <button type="button" className="quiet" aria-pressed={isChanging} onClick={() => setChanging(!isChanging)}>
                  Change the levels
                </button>
              </div>
            </>
          )}
        </div>
        <SocketProfile
          limb={now.limb}
          previous={previous}
          next={{ number, stations: design.stations }}
          unexplainedAt={design.unexplained.map(({ distanceMm }) => distanceMm)}
          stationsFrom={where.stationsFrom}
          unit={unit}
        />
      </div>
      <SelectField
        name="limbMeasurementId"
        label="Made to the limb as measured"
        empty="no measurement"
        options={measurements.map(({ id, label }) => ({ value: id, label }))}
        first={first.limbMeasurementId ?? ""}
        hint="If the limb changes detectably after it, the evidence goes stale."
      />
    </div>
  );
}

interface WhatWasFoundProps {
  found: readonly Found[];
  previous: { id: string; number: number } | undefined;
  /** The findings are of the socket that is chosen now. */
  isShown: boolean;
  takeUp: (offer: Offer) => void;
}

function WhatWasFound({ found, previous, isShown, takeUp }: WhatWasFoundProps) {
  const hasScripts = useHasScripts();
  if (!previous) return null;
  return (
    <section className={styles.found} aria-labelledby="found">
      <h2 id="found">What was found with socket {previous.number}</h2>
      {!isShown ? (
        <p>
          <Link href={`?from=${previous.id}`}>Show what was found with socket {previous.number}</Link>: the page is loaded again,
          and what is typed here is lost.
        </p>
      ) : found.length === 0 ? (
        <p className="soft">Nothing on record asks for an adjustment: no concern, no mark, no pain.</p>
      ) : (
        <>
          <p className="soft">
            With what practitioners consider: common practice, no source. It suggests and never orders; how much, and why, is
            yours to write.
          </p>
          <FoundList
            found={found}
            take={(offer) =>
              hasScripts && (
                <button type="button" className="quiet" onClick={() => takeUp(offer)}>
                  Take up
                  <span className="heard">
                    : {offer.kind}. {offer.what}
                  </span>
                </button>
              )
            }
          />
        </>
      )}
    </section>
  );
}

function statusOf(design: Design, { previousNumber, unit }: { previousNumber: number | undefined; unit: Unit }): string {
  if (design.problem) return design.problem;
  if (previousNumber === undefined) return "There is no socket before it: nothing has to explain these dimensions.";
  if (design.unexplained.length === 0) return `The adjustments explain every level that it shares with socket ${previousNumber}.`;
  const places = design.unexplained.map(({ distanceMm }) => showQuantity(distanceMm, unit)).join(", ");
  return `Not explained by the adjustments, at ${places}. Write the adjustment that is missing, or take the level as proposed. It can be saved as it stands; the check that the socket is described is then not met.`;
}

/** What stands in a field already when the page wakes up was typed before, and is kept. */
function takeEarly(element: HTMLElement | null, { take, type }: Pick<ReturnType<typeof useSocketDesign>, "take" | "type">): void {
  if (!element || element.dataset.awake === "yes") return;
  element.dataset.awake = "yes";
  const fields = [...element.querySelectorAll<HTMLInputElement | HTMLSelectElement>("input, select")];
  for (const field of fields) {
    const [, row] = /^stations\.(\d+)\.circumferenceMm$/.exec(field.name) ?? [];
    if (row !== undefined && field instanceof HTMLInputElement && field.value !== field.defaultValue)
      type(Number(row), "own", field.value);
  }
  const wasTyped = fields.some(
    (field) => field.name.startsWith("adjustments.") && field instanceof HTMLInputElement && field.value !== field.defaultValue,
  );
  if (wasTyped) take(element.closest("form"));
}
