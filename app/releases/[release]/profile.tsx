import type { ReleaseSheet } from "@/lib/print/release-sheet";

const width = 340;
const height = 190;
const middle = 92;

/** The inside of the definitive socket and the limb from the side, as if both were round. */
export function Profile({ dimensions }: { dimensions: ReleaseSheet["dimensions"] }) {
  const first = dimensions[0];
  const last = dimensions.at(-1);
  if (!first || !last || first === last) return <p>A profile needs two levels or more.</p>;
  const span = last.distanceMm - first.distanceMm;
  const widest = Math.max(...dimensions.flatMap(({ definitiveMm, limbMm }) => [definitiveMm, limbMm ?? 0])) / Math.PI;
  const scale = Math.min((width - 60) / span, 130 / widest);
  const x = (distanceMm: number) => 34 + (distanceMm - first.distanceMm) * scale;
  const outline = (circumferences: { distanceMm: number; mm: number }[], sign: 1 | -1) =>
    circumferences
      .map(({ distanceMm, mm }) => `${x(distanceMm).toFixed(1)},${(middle + (sign * mm * scale) / (2 * Math.PI)).toFixed(1)}`)
      .join(" ");
  const definitive = dimensions.map(({ distanceMm, definitiveMm }) => ({ distanceMm, mm: definitiveMm }));
  const limb = dimensions.flatMap(({ distanceMm, limbMm }) => (limbMm === undefined ? [] : [{ distanceMm, mm: limbMm }]));
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label="Profile of the definitive socket and the limb, level by level as in the table"
      width="100%"
    >
      {dimensions.map(({ distanceMm }) => (
        <g key={distanceMm}>
          <path d={`M${x(distanceMm).toFixed(1)} 18V166`} stroke="var(--line)" />
          <text x={x(distanceMm)} y={182} textAnchor="middle" fontSize="12" fill="var(--soft)">
            {distanceMm}
          </text>
        </g>
      ))}
      {([1, -1] as const).map((sign) => (
        <g key={sign} fill="none">
          <polyline points={outline(limb, sign)} stroke="var(--soft)" strokeDasharray="5 4" />
          <polyline points={outline(definitive, sign)} stroke="var(--ink)" strokeWidth="2" />
        </g>
      ))}
      <text x={width - 4} y={12} textAnchor="end" fontSize="12" fill="var(--soft)">
        dashed: limb; full: inside of the definitive socket
      </text>
    </svg>
  );
}
