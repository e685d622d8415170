"use client";

import { useTyped } from "@/app/_parts/form-context";
import { formatNumber } from "@/app/_parts/numbers";
import { StateMark } from "@/app/_parts/state-mark";
import { useFieldUnit, useOwnUnits } from "@/app/_parts/units";
import type { EpisodeRecord } from "@/lib/fit/bundle";
import type { Limits } from "@/lib/fit/limits";
import { type TrialLoadReading, trialLoad } from "@/lib/fit/trial-load";

/** How the load pulls on the limb as it is typed, against the planned device; and what would match it. */
export function LoadReading({ device, limits }: { device: EpisodeRecord["device"]; limits: Limits }) {
  const typed = useTyped();
  const told = useOwnUnits();
  const [mass, length] = [useFieldUnit("loadKg"), useFieldUnit("loadDistanceMm")];
  const [loadKg, loadDistanceMm] = [mass?.read(String(typed.loadKg ?? "")), length?.read(String(typed.loadDistanceMm ?? ""))];
  const plan = {
    ...(loadKg === undefined || loadKg < 0 ? {} : { loadKg }),
    ...(loadDistanceMm === undefined || loadDistanceMm < 0 ? {} : { loadDistanceMm }),
  };
  const reading = trialLoad(plan, device, { limits });
  return (
    <div role="status">
      <p>
        <StateMark state={reading.state} wrap>
          {reading.value === undefined
            ? reading.state === "unknown"
              ? "not known"
              : "no load"
            : `${formatNumber(reading.value, 2)} × the device’s pull, ${reading.state}`}
        </StateMark>
      </p>
      <p className="soft">
        {told(reading.why)} {told(whatMatches(reading))}
      </p>
    </div>
  );
}

function whatMatches({ matchingMassKg, matchingDistanceMm, state }: TrialLoadReading): string {
  if (state === "met" || matchingMassKg === undefined || matchingDistanceMm === undefined) return "";
  return `Or move this load to ${formatNumber(matchingDistanceMm, 0)} mm.`;
}
