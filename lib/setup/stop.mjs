// @ts-check

/**
 * A reason to stop that the person at the keyboard can act on. It is shown without a stack trace;
 * every other error is a fault of the program and keeps its trace.
 */
export class Stop extends Error {
  /**
   * @param {string} sentence what is the matter
   * @param {string} remedy what to do about it
   * @param {ErrorOptions} [options]
   */
  constructor(sentence, remedy, options) {
    super(sentence, options);
    this.name = "Stop";
    this.remedy = remedy;
  }
}
