/** Lower limb: from the foot to the hip, and what all its levels share. */

import type { ConsiderRow } from "./consider-row";
import { considerLowerBrim } from "./considerations/lower-brim";
import { considerLowerFoot } from "./considerations/lower-foot";
import { considerLowerKnee } from "./considerations/lower-knee";
import { considerLowerShin } from "./considerations/lower-shin";
import { considerLowerThigh } from "./considerations/lower-thigh";
import { considerLowerWhole } from "./considerations/lower-whole";

export const considerLower: readonly ConsiderRow[] = [
  ...considerLowerFoot,
  ...considerLowerShin,
  ...considerLowerKnee,
  ...considerLowerThigh,
  ...considerLowerBrim,
  ...considerLowerWhole,
];
