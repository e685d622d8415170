/** A series of 1…n with exactly this S: each value is put so that it falls as often as is left to fall. */
export function seriesWith({ count, s }: { count: number; s: number }): number[] {
  let falling = ((count * (count - 1)) / 2 - s) / 2;
  const series: number[] = [];
  for (let value = 1; value <= count; value++) {
    const moves = Math.min(falling, value - 1);
    series.splice(series.length - moves, 0, value);
    falling -= moves;
  }
  return series;
}
