/** How often a property is tried: a thousand times by default, or as often as FIT_RUNS asks for. */
export const runs = (byDefault = 1000): { numRuns: number } => ({ numRuns: Number(process.env.FIT_RUNS ?? byDefault) });
