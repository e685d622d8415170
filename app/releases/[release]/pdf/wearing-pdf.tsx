import { NotFound } from "@/lib/records/refusals";
import type { SeenWearing } from "@/lib/records/see-after-release";
import { type Paper, setOnPaper } from "./paper";
import { WearingPaper } from "./wearing-paper";

/** @throws NotFound where nothing is planned yet */
export async function wearSchedulePdf({ plan, signOff, clinic, bundle }: SeenWearing, paper: Paper): Promise<Buffer> {
  if (!plan) throw new NotFound("wear schedule yet");
  return setOnPaper({ signOff, clinic, bundle, plan }, (said) => <WearingPaper {...said} paper={paper} />);
}
