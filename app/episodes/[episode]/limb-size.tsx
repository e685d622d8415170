import { ChartWithTable } from "@/app/_parts/chart-with-table";
import { dayAt, longDay, shortDay } from "@/app/_parts/dates";
import { Empty } from "@/app/_parts/empty";
import { formatNumber } from "@/app/_parts/numbers";
import { StateMark } from "@/app/_parts/state-mark";
import { type Assessment, type Bundle, type Limits, limbVolume, limitValue, type Station, volumeOfSpan } from "@/lib/fit";

interface VolumeAt {
  at: string;
  volumeMl: number;
  standardErrorMl: number;
}

/** Volumes over the span that all measurements share, so that they can be compared; each over its own where they share none. */
export function volumes({ limbMeasurements }: Bundle, limits: Limits): VolumeAt[] {
  const circumferenceSdMm = limitValue(limits, "tape-error-mm");
  const from = Math.max(...limbMeasurements.map(({ stations }) => stations[0]?.distanceMm ?? 0));
  const to = Math.min(...limbMeasurements.map(({ stations }) => stations.at(-1)?.distanceMm ?? 0));
  return limbMeasurements.map(({ at, stations }) => ({ at, ...volumeOver(stations, { from, to, circumferenceSdMm }) }));
}

function volumeOver(
  stations: Station[],
  { from, to, circumferenceSdMm }: { from: number; to: number; circumferenceSdMm: number },
) {
  return to > from
    ? volumeOfSpan(stations, { fromMm: from, toMm: to, circumferenceSdMm })
    : limbVolume(stations, { circumferenceSdMm });
}

const error90 = 1.645;

const dayMs = 86_400_000;
export const dayNumber = (at: string | number): number => new Date(at).getTime() / dayMs;

/** The measurement that the latest one was compared with when the size was judged settled. */
function settledSince(points: readonly VolumeAt[], limits: Limits): string | undefined {
  const last = points.at(-1);
  const apart = limitValue(limits, "settled-apart-days");
  return last && points.findLast(({ at }) => Date.parse(last.at) - Date.parse(at) >= apart * dayMs)?.at;
}

/** Points of the volume with the 90 % interval of each, and from when on the size is judged settled. */
export function volumePoints(bundle: Bundle, { limits, assessment }: { limits: Limits; assessment: Assessment }) {
  const found = volumes(bundle, limits);
  const settled = assessment.gates.find(({ id }) => id === "limb-settled");
  const since = settled?.state === "met" ? settledSince(found, limits) : undefined;
  return {
    settled,
    points: found.map(({ at, volumeMl, standardErrorMl }) => {
      const day = dayAt(at, bundle.clinic.timeZone);
      return {
        at: dayNumber(at),
        day,
        label: shortDay(day),
        value: volumeMl,
        low: volumeMl - error90 * standardErrorMl,
        high: volumeMl + error90 * standardErrorMl,
      };
    }),
    zone: since === undefined ? undefined : { from: dayNumber(since), label: "settled (within ±5 %)" },
  };
}

/** The limb's volume over time with its error band, and the same as a table. */
export function LimbSize({
  bundle,
  assessment,
  limits,
  headId,
}: {
  bundle: Bundle;
  assessment: Assessment;
  limits: Limits;
  headId: string;
}) {
  const { settled, points, zone } = volumePoints(bundle, { limits, assessment });
  const [first, last] = [points[0], points.at(-1)];
  return (
    <>
      <h2 id={headId}>The limb’s size</h2>
      {!first || !last ? (
        <Empty title="Not measured yet" first={{ href: `/episodes/${bundle.episode.id}/measure`, label: "Measure the limb" }}>
          Circumferences at the same levels on different days show when the limb stops changing.
        </Empty>
      ) : (
        <>
          {settled && (
            <p>
              <StateMark state={settled.state} wrap>
                {settled.why}
              </StateMark>
            </p>
          )}
          <ChartWithTable
            title="Volume between the same levels, mL, with its 90 % error band"
            along="day"
            measure="volume"
            unit="mL"
            summary={`Limb volume from ${formatNumber(first.value, 0)} mL on ${longDay(first.day)} to ${formatNumber(last.value, 0)} mL on ${longDay(last.day)}.`}
            points={points}
            zone={zone}
          />
        </>
      )}
    </>
  );
}
