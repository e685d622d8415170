/** Upper limb: from the hand to the shoulder, and what all its levels share. */
import type { ConsiderRow } from "./consider-row";
import { considerUpperArm } from "./considerations/upper-arm";
import { considerUpperElbow } from "./considerations/upper-elbow";
import { considerUpperHand } from "./considerations/upper-hand";
import { considerUpperShoulder } from "./considerations/upper-shoulder";
import { considerUpperWhole } from "./considerations/upper-whole";

export const considerUpper: readonly ConsiderRow[] = [
  ...considerUpperHand,
  ...considerUpperElbow,
  ...considerUpperArm,
  ...considerUpperShoulder,
  ...considerUpperWhole,
];
