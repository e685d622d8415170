/** The two contact forces that hold a socket on a limb against a load. An estimate for comparing loads, no pressure. */
import { FitInputError } from "./errors";

export interface LeverLoad {
  /** Weight of the load, in N. */
  loadN: number;
  /** Distance of the load from the joint, in mm; likewise the two contacts. */
  loadDistanceMm: number;
  proximalMm: number;
  distalMm: number;
}

export interface SocketCouple {
  proximalN: number;
  distalN: number;
  /** About the joint. */
  momentNm: number;
  caution: string;
  source: "moment-about-joint";
}

const caution =
  "Static, a level forearm, no friction, two points of contact: an estimate for comparing loads. It is no pressure on the skin.";

/**
 * Contact forces of a lever on two points: F_distal = W(L − p)/(d − p), F_proximal = W(L − d)/(d − p). Their difference
 * bears the load. A negative force is one that pulls the other way.
 *
 * @throws FitInputError where a number is not finite or is negative, or the distal contact is not beyond the proximal one
 * @source moment-about-joint
 *
 * @example
 * socketCouple({ loadN: 6.668522, loadDistanceMm: 220, proximalMm: 20, distalMm: 120 })
 * // => { proximalN: 6.66852, distalN: 13.33704, momentNm: 1.467075 }
 */
export function socketCouple({ loadN, loadDistanceMm, proximalMm, distalMm }: LeverLoad): SocketCouple {
  for (const [name, value] of Object.entries({ loadN, loadDistanceMm, proximalMm, distalMm }))
    if (!(value >= 0 && value < 1e6)) throw new FitInputError(name, "expected 0 or more");
  const betweenMm = distalMm - proximalMm;
  if (!(betweenMm >= 1)) throw new FitInputError("distalMm", "expected a distal contact at least 1 mm beyond the proximal one");
  return {
    proximalN: (loadN * (loadDistanceMm - distalMm)) / betweenMm,
    distalN: (loadN * (loadDistanceMm - proximalMm)) / betweenMm,
    momentNm: (loadN * loadDistanceMm) / 1000,
    caution,
    source: "moment-about-joint",
  };
}
