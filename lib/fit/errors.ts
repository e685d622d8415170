/** Input that cannot be judged: says which field, what was expected, and what was found. */
export class FitInputError extends Error {
  override readonly name = "FitInputError";

  constructor(
    /** Path of the field, as in `limbMeasurements[0].stations[2].circumferenceMm`. */
    readonly path: string,
    /** What was expected there, in plain words. */
    readonly expected: string,
  ) {
    super(path === "" ? expected : `${path}: ${expected}`);
  }
}
