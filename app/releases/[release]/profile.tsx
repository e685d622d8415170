import type { ReleaseSheet } from "@/lib/print/release-sheet";
import { noProfile, profileBox, profileGeometry, profileWords } from "./profile-geometry";

export function Profile({ dimensions }: { dimensions: ReleaseSheet["dimensions"] }) {
  const geometry = profileGeometry(dimensions);
  if (!geometry) return <p>{noProfile}</p>;
  const { width, height, top, bottom, words } = profileBox;
  return (
    <svg
      viewBox={`0 0 ${width} ${height}`}
      role="img"
      aria-label="Profile of the definitive socket and the limb, level by level as in the table"
      width="100%"
    >
      {geometry.levels.map(({ x, distanceMm }) => (
        <g key={distanceMm}>
          <path d={`M${x.toFixed(1)} ${top}V${bottom}`} stroke="var(--line)" />
          <text x={x} y={words} textAnchor="middle" fontSize="12" fill="var(--soft)">
            {distanceMm}
          </text>
        </g>
      ))}
      <g fill="none">
        {geometry.limb.map((points) => (
          <polyline key={points} points={points} stroke="var(--soft)" strokeDasharray="5 4" />
        ))}
        {geometry.definitive.map((points) => (
          <polyline key={points} points={points} stroke="var(--ink)" strokeWidth="2" />
        ))}
      </g>
      <text x={width - 4} y={12} textAnchor="end" fontSize="12" fill="var(--soft)">
        {profileWords}
      </text>
    </svg>
  );
}
