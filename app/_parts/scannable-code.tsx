import styles from "./scannable-code.module.css";

/** The squares of a code (ISO/IEC 18004), with the white border that a camera needs. */
export interface ScannableCode {
  /** Squares on a side, border included. */
  side: number;
  /** The dark squares, as the path of a drawing. */
  path: string;
}

/** Black on white in every scheme: many cameras do not read it the other way round. */
export function CodeToScan({ code, label }: { code: ScannableCode; label: string }) {
  return (
    <svg
      role="img"
      aria-label={label}
      viewBox={`0 0 ${code.side} ${code.side}`}
      shapeRendering="crispEdges"
      className={styles.code}
    >
      <rect width={code.side} height={code.side} fill="#ffffff" />
      <path d={code.path} fill="#000000" />
    </svg>
  );
}
