"use client";

import { useContext, useState } from "react";
import { FormContext } from "@/app/_parts/form-context";
import { type FormValues, valuesOf } from "@/app/_parts/form-state";
import { rowsToBegin } from "@/app/_parts/rows";
import { useFieldUnit } from "@/app/_parts/units";
import type { Adjustment, Station } from "@/lib/fit/bundle";
import type { WhereThirdsLie } from "@/lib/fit/explain-dimensions";
import type { Limits } from "@/lib/fit/limits";
import type { Unit } from "@/lib/fit/units";
import { type AdjustmentRow, firstOfAdjustment, firstOfOffer, isFreeRow } from "./adjustment-first";
import { designOf, shapingOf } from "./design";
import type { FindingChoice } from "./findings";
import type { Found } from "./found";
import type { Offer } from "./found-offers";
import { type LevelText, levelsFollowing, levelsKeeping, levelsSent, shownOf } from "./level-texts";

export interface SocketDesignProps {
  number: number;
  where: WhereThirdsLie & { stationsFrom: "distal end" | "proximal landmark" };
  limits: Limits;
  sockets: readonly { id: string; number: number; stations: readonly Station[] }[];
  measurements: readonly { id: string; label: string; stations: readonly Station[] }[];
  /** What was found with the socket that this one is derived from at first. */
  found: readonly Found[];
  findings: readonly FindingChoice[];
  /** Considered adjustments to begin with. */
  offers: readonly Offer[];
  first: {
    stations: readonly Station[];
    adjustments: readonly Adjustment[];
    derivedFromId?: string | undefined;
    limbMeasurementId?: string | undefined;
  };
}

const levelsToFill = 5;

/** A socket as it is being designed: the rows of the form, and what follows from them. */
export function useSocketDesign({ where, limits, sockets, measurements, offers, first }: SocketDesignProps) {
  const { state } = useContext(FormContext);
  const inUnit = useFieldUnit("circumferenceMm");
  const unit: Unit = inUnit?.unit ?? "mm";
  const read = (text: string): number | undefined => inUnit?.read(text);
  const show = (mm: number): string => inUnit?.first(String(mm)) ?? String(mm);
  const sent = Object.keys(state.values).length > 0;
  const [typed, setTyped] = useState<FormValues>(state.values);

  const [adjustments, setAdjustments] = useState<AdjustmentRow[]>(() => {
    const given = [
      ...first.adjustments.map((adjustment) => ({ first: firstOfAdjustment(adjustment) })),
      ...offers.map((offer) => ({ first: firstOfOffer(offer), considered: offer.what })),
    ];
    const blank = sockets.length > 0 ? Math.max(1, 2 - given.length) : 0;
    return rowsToBegin({ name: "adjustments", values: state.values, filled: given.length, blank }).map((row) => ({
      row,
      first: {},
      ...given[row],
    }));
  });

  const chosen = (name: "derivedFromId" | "limbMeasurementId"): string => String(typed[name] ?? first[name] ?? "");
  const previous = sockets.find(({ id }) => id === chosen("derivedFromId"));
  const limb = measurements.find(({ id }) => id === chosen("limbMeasurementId"))?.stations ?? [];
  const base = previous?.stations ?? limb;
  const shaping = shapingOf(
    valuesOfRows(adjustments, typed),
    adjustments.map(({ row }) => row),
  );
  const asDesigned = (levels: readonly LevelText[]) =>
    designOf({
      rows: levels.map(({ row, distance, own }) => ({ row, distanceMm: read(distance), own: own === null ? null : read(own) })),
      base,
      previous: previous?.stations ?? [],
      limb,
      adjustments: shaping,
      where,
      limits,
    });

  const [levels, setLevels] = useState<LevelText[]>(() => {
    if (sent) return levelsSent(state.values, rowsToBegin({ name: "stations", values: state.values, filled: 0, blank: 0 }));
    if (first.stations.length === 0) return Array.from({ length: levelsToFill }, (_, row) => ({ row, distance: "", own: null }));
    const { levels: proposed } = asDesigned(levelsFollowing(first.stations, show));
    return levelsKeeping(first.stations, (mm) => proposed.find(({ distanceMm }) => distanceMm === mm)?.proposedMm, show);
  });
  const design = asDesigned(levels);
  const proposedAt = (row: number) => design.levels.find((level) => level.row === row)?.proposedMm;

  return {
    unit,
    previous,
    limb,
    design,
    adjustments,
    shown: (row: number) =>
      shownOf(
        levels.find((level) => level.row === row),
        proposedAt(row),
        show,
      ),
    isAnyTyped: levels.some(({ row, own }) => own !== null && proposedAt(row) !== undefined),

    /** Reads the whole form. Another socket to derive from brings its own levels; what was typed at the same ones stays. */
    take(form: HTMLFormElement | null) {
      if (!form) return;
      const values = valuesOf(new FormData(form));
      const origin = sockets.find(({ id }) => id === values.derivedFromId);
      if (origin && origin.id !== previous?.id) setLevels(levelsFollowing(origin.stations, show, levels));
      setTyped(values);
    },
    type: (row: number, field: "distance" | "own", text: string) =>
      setLevels((now) => now.map((level) => (level.row === row ? { ...level, [field]: text } : level))),
    /** One level, or all, go back to the proposal; where there is none, what was typed stays. */
    follow: (only?: number) =>
      setLevels(
        levels.map((level) =>
          (only === undefined || only === level.row) && proposedAt(level.row) !== undefined ? { ...level, own: null } : level,
        ),
      ),
    addLevel: () => setLevels([...levels, { row: nextRow(levels), distance: "", own: null }]),
    removeLevel: (row: number) => setLevels(levels.filter((level) => level.row !== row)),

    addAdjustment: () => setAdjustments([...adjustments, { row: nextRow(adjustments), first: {} }]),
    removeAdjustment: (row: number) => setAdjustments(adjustments.filter((other) => other.row !== row)),
    /** Takes the place of the first row that is free. */
    takeUp(offer: Offer) {
      const taken: AdjustmentRow = {
        row: nextRow(adjustments),
        first: firstOfOffer(offer),
        considered: offer.what,
        isNew: true,
      };
      const free = adjustments.find((row) => isFreeRow(row, typed));
      setAdjustments(free ? adjustments.map((row) => (row === free ? taken : row)) : [...adjustments, taken]);
    },
  };
}

const nextRow = (rows: readonly { row: number }[]): number => Math.max(-1, ...rows.map(({ row }) => row)) + 1;

/** What stands in the rows: typed or, before anything was, what they began with. */
const valuesOfRows = (rows: readonly AdjustmentRow[], typed: FormValues): FormValues => ({
  ...Object.fromEntries(
    rows.flatMap(({ row, first }) => Object.entries(first).map(([name, value]) => [`adjustments.${row}.${name}`, value])),
  ),
  ...typed,
});
