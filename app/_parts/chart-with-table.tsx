import styles from "./chart-with-table.module.css";
import { LineChart, type LineChartProps } from "./line-chart";
import { formatQuantity } from "./numbers";

interface ChartWithTableProps extends LineChartProps {
  /** What is drawn, with its unit and error: "Volume between the same levels, mL, with its 90 % error band". */
  title: string;
  /** The head of the first column: "day", "minute". */
  along: string;
  /** The head of the second: "volume". */
  measure: string;
}

/** A chart, and the same numbers as a table one press away; on paper and without scripts the table stands open. */
export function ChartWithTable({ title, along, measure, ...chart }: ChartWithTableProps) {
  const { points, unit, limit, zone } = chart;
  const withError = points.some(({ low }) => low !== undefined);
  return (
    <figure className={styles.figure}>
      <figcaption className="soft">{title}</figcaption>
      <LineChart {...chart} />
      <details className={styles.same}>
        <summary>The same as a table</summary>
        <table>
          <caption className="heard">{title}</caption>
          <thead>
            <tr>
              <th scope="col">{along}</th>
              <th scope="col" className="n">
                {measure}
              </th>
              {withError && (
                <th scope="col" className="n">
                  90 % interval
                </th>
              )}
            </tr>
          </thead>
          <tbody>
            {points.map(({ at, label, value, low, high }) => (
              <tr key={at}>
                <th scope="row">{label}</th>
                <td className="n">{formatQuantity({ value, unit })}</td>
                {withError && (
                  <td className="n">
                    {low === undefined || high === undefined
                      ? "not known"
                      : `${formatQuantity({ value: low, unit })} to ${formatQuantity({ value: high, unit })}`}
                  </td>
                )}
              </tr>
            ))}
          </tbody>
        </table>
        {limit && <p className="soft">Limit: {limit.label}</p>}
        {zone && (
          <p className="soft">
            From {points.find(({ at }) => at >= zone.from)?.label}: {zone.label}
          </p>
        )}
      </details>
    </figure>
  );
}
