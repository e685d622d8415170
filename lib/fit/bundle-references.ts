/** A bundle names records by their ids: each id once, and none that is not there. */
import type { Bundle } from "./bundle";
import { FitInputError } from "./errors";
import * as words from "./words";

/** @throws FitInputError with the path of the first id that is used twice, or names a record that is not there */
export function checkReferences(bundle: Bundle): void {
  for (const list of ["limbMeasurements", "sockets", "fittings", "wearTrials", "carried"] as const) {
    const seen = new Set<string>();
    bundle[list].forEach((record, index) => {
      if (seen.has(record.id)) throw new FitInputError(`${list}[${index}].id`, `the id ${record.id} is used twice`);
      seen.add(record.id);
    });
  }
  const sockets = new Map(bundle.sockets.map((socket) => [socket.id, socket]));
  const measurements = new Set(bundle.limbMeasurements.map(({ id }) => id));
  const numbers = new Set<number>();
  bundle.sockets.forEach((socket, index) => {
    if (numbers.has(socket.number))
      throw new FitInputError(`sockets[${index}].number`, `the number ${socket.number} is used twice`);
    numbers.add(socket.number);
    if (socket.limbMeasurementId !== undefined && !measurements.has(socket.limbMeasurementId))
      throw new FitInputError(
        `sockets[${index}].limbMeasurementId`,
        `no limb measurement has the id ${socket.limbMeasurementId}`,
      );
    if (socket.derivedFrom === undefined) return;
    const origin = sockets.get(socket.derivedFrom);
    if (!origin) throw new FitInputError(`sockets[${index}].derivedFrom`, `no socket has the id ${socket.derivedFrom}`);
    if (origin.number >= socket.number)
      throw new FitInputError(`sockets[${index}].derivedFrom`, "a socket is derived from one with a lower number");
  });
  const checks: readonly string[] = words.checksOf(bundle.episode.level);
  bundle.fittings.forEach((fitting, index) => {
    const foreign = Object.keys(fitting.checks).find((key) => !checks.includes(key));
    if (foreign !== undefined)
      throw new FitInputError(`fittings[${index}].checks.${foreign}`, `not a check of a ${bundle.episode.level} fitting`);
  });
  for (const list of ["fittings", "wearTrials", "signOffs"] as const) {
    (bundle[list] ?? []).forEach((record, index) => {
      if (!sockets.has(record.socketId))
        throw new FitInputError(`${list}[${index}].socketId`, `no socket has the id ${record.socketId}`);
    });
  }
}
