/** Any limb: what is seen, felt, measured and checked, wherever it is. */

import type { ConsiderRow } from "./consider-row";
import { considerAnyBench } from "./considerations/any-bench";
import { considerAnyChecks } from "./considerations/any-checks";
import { considerAnyFelt } from "./considerations/any-felt";
import { considerAnyMarks } from "./considerations/any-marks";
import { considerAnyPlaces } from "./considerations/any-places";
import { considerAnyStop } from "./considerations/any-stop";

export const considerAny: readonly ConsiderRow[] = [
  ...considerAnyStop,
  ...considerAnyFelt,
  ...considerAnyMarks,
  ...considerAnyPlaces,
  ...considerAnyChecks,
  ...considerAnyBench,
];
