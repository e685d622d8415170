/** Every wearer of the invented clinic. */
import type { Story } from "../story";
import { craneDriver, deckhand, schoolchild, vet, welder } from "./above-elbow";
import { boatBuilder } from "./boat-builder";
import { choirSinger, lighthouseGuide } from "./foot-and-ankle";
import { gardener } from "./gardener";
import { apprentice, baker, cellist, teacher } from "./hand-and-wrist";
import { carpenter, shippingClerk } from "./knee-disarticulation";
import { organTuner, potter, sailmaker, swimmingTeacher } from "./thigh-and-hip";
import { bookbinder, cook, mechanic, tugSkipper } from "./transfemoral";
import { electrician, glassblower, netMender, tramDriver, translator } from "./transradial";
import { fisherman, florist, nightNurse, postwoman, stonemason } from "./transtibial";
import { bookseller, dancer, harbourPilot, roofer, student, surveyor } from "./transtibial-open";

export const stories: readonly Story[] = [
  ...[baker, teacher, cellist, apprentice],
  ...[boatBuilder, netMender, translator, electrician, glassblower, tramDriver],
  ...[welder, craneDriver, schoolchild, vet, deckhand],
  ...[choirSinger, lighthouseGuide],
  ...[gardener, fisherman, postwoman, stonemason, nightNurse, florist],
  ...[surveyor, dancer, roofer, student, bookseller, harbourPilot],
  ...[carpenter, shippingClerk],
  ...[cook, bookbinder, mechanic, tugSkipper, potter, organTuner, swimmingTeacher, sailmaker],
];
