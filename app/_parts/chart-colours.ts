/** A chart has the colours and the type of the page as it is now, in light, in dark and on paper. */

/** The type of the page around it. */
export const fontOf = ({ canvas }: { canvas: HTMLCanvasElement }): string => getComputedStyle(canvas).fontFamily;

/** A colour of the page as it is now: the canvas takes it on and tells what it came to. */
export function tokenColour({ canvas }: { canvas: HTMLCanvasElement }, token: string, opacity = 1): string {
  canvas.style.color = `var(${token})`;
  const [red = 0, green = 0, blue = 0] =
    getComputedStyle(canvas)
      .color.match(/[\d.]+/g)
      ?.map(Number) ?? [];
  return `rgba(${red}, ${green}, ${blue}, ${opacity})`;
}

/** For an option of a chart, which is asked for at every drawing. */
export const coloured =
  (token: string, opacity?: number) =>
  ({ chart }: { chart: { canvas: HTMLCanvasElement } }): string =>
    tokenColour(chart, token, opacity);
