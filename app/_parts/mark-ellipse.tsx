import { fillOf } from "./hatches";
import styles from "./limb-map.module.css";
import type { Ellipse } from "./limb-map-marks";

interface MarkEllipseProps {
  /** Of the map, for its hatches and clips. */
  id: string;
  ellipse: Pick<Ellipse, "on" | "centre" | "radiusX" | "radiusY" | "rotation">;
  /** Null where it is not known yet. */
  grade: number | null;
  className?: string | undefined;
}

/** One mark at its place and size, under its hatch. */
export function MarkEllipse({
  id,
  ellipse: { on, centre, radiusX, radiusY, rotation },
  grade,
  className = "",
}: MarkEllipseProps) {
  return (
    <g clipPath={`url(#${id}-${on})`}>
      <ellipse
        cx={centre.x}
        cy={centre.y}
        rx={radiusX}
        ry={radiusY}
        transform={rotation === 0 ? undefined : `rotate(${rotation.toFixed(1)} ${centre.x.toFixed(1)} ${centre.y.toFixed(1)})`}
        fill={fillOf(id, grade ?? 0)}
        className={`${styles.mark} ${styles[grade === null ? "ungraded" : `grade${grade}`] ?? ""} ${className}`}
      />
    </g>
  );
}
