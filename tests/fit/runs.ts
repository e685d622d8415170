/**
 * How often a property is tried: as often as FIT_RUNS asks for, a thousand times in `npm run test:all`. Each run takes a
 * fresh seed and prints it where a property fails.
 */
export const runs = (byDefault = 200): { numRuns: number } => ({ numRuns: Number(process.env.FIT_RUNS ?? byDefault) });
