import type { Chart, ChartType, DefaultDataPoint } from "chart.js";
import { type RefObject, useEffect, useRef } from "react";

/** A chart that is drawn anew when the page turns dark, goes to paper, or gets its own type after the first drawing. */
export function useRedrawnChart<Type extends ChartType, Points = DefaultDataPoint<Type>>(): RefObject<Chart<
  Type,
  Points
> | null> {
  const chart = useRef<Chart<Type, Points>>(null);
  useEffect(() => {
    const redraw = () => {
      chart.current?.resize();
      chart.current?.update("none");
    };
    const outside = [window.matchMedia("(prefers-color-scheme: dark)"), window.matchMedia("print")];
    for (const query of outside) query.addEventListener("change", redraw);
    void document.fonts.ready.then(redraw);
    return () => {
      for (const query of outside) query.removeEventListener("change", redraw);
    };
  }, []);
  return chart;
}
