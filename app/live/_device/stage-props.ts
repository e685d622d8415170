import type { WearTrial } from "@/lib/fit/replay-wear-trial";
import type { LiveTrial } from "./live-trial";
import type { Shown, TrialOnDevice } from "./trial-on-device";

/** What every stage of a trial on the screen is given. */
export interface StageProps {
  device: TrialOnDevice;
  shown: Shown;
  trial: LiveTrial;
  stand: WearTrial;
  nowMs: number;
  isOwn: boolean;
}
