/** How often a property is tried: quick by default, and as thorough as FIT_RUNS asks for. */
export const runs = (byDefault = 150): { numRuns: number } => ({ numRuns: Number(process.env.FIT_RUNS ?? byDefault) });
