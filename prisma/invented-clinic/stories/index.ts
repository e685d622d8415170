/** Every wearer of the invented clinic. */
import type { Story } from "../story";
import { deckhand, schoolchild, vet } from "./above-elbow";
import { boatBuilder } from "./boat-builder";
import { craneDriver, welder } from "./elbow-disarticulation";
import { choirSinger, lighthouseGuide } from "./foot-and-ankle";
import { gardener } from "./gardener";
import { apprentice, baker, cellist, teacher } from "./hand-and-wrist";
import { carpenter, shippingClerk } from "./knee-disarticulation";
import { organTuner, potter, sailmaker, swimmingTeacher } from "./thigh-and-hip";
import { bookbinder, cook, mechanic, tugSkipper } from "./transfemoral";
import { electrician, glassblower, netMender, tramDriver, translator } from "./transradial";
import { postwoman, stonemason } from "./transtibial-forbidden";
import { dancer, fisherman, florist, nightNurse } from "./transtibial-not-ready";
import { bookseller, harbourPilot, surveyor } from "./transtibial-open";
import { roofer, student } from "./transtibial-signed";

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
