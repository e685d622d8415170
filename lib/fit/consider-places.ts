/** Places on a limb by their names: at which levels they are, where on the limb map, and what they are a kind of. */
import { type Aspect, type Level, levels, type Third } from "./words";

interface Span {
  levels: readonly Level[];
  /** Missing: all round. */
  aspects?: readonly Aspect[];
  /** Missing: all along. Where both are missing, the place is not guessed from the map. */
  thirds?: readonly Third[];
}

interface Place {
  spans: readonly Span[];
  within: readonly string[];
}

type Where = Omit<Span, "levels">;
const at = (where: Where, ...of: Level[]): Span => ({ levels: of, ...where });
const place = (spans: Span | readonly Span[], ...within: string[]): Place => ({
  spans: "levels" in spans ? [spans] : spans,
  within,
});
const everywhere = (where: Where, ...within: string[]) => place(at(where, ...levels), ...within);

const side = { aspects: ["medial", "lateral"] } as const;
const proximal = (...aspects: Aspect[]): Where => ({ aspects, thirds: ["proximal"] });
const distal = (...aspects: Aspect[]): Where => ({ aspects, thirds: ["distal"] });

const placeTable = {
  // Of any limb
  brim: everywhere({ thirds: ["proximal"] }),
  "distal end": everywhere({ thirds: ["distal"] }),
  "bony point": everywhere({}),
  tendon: everywhere({}),
  nerve: everywhere({}),
  scar: everywhere({}),

  // Joints: where motion is lost
  wrist: place(at({}, "partial hand")),
  forearm: place(at({}, "partial hand", "wrist disarticulation", "transradial")),
  elbow: place(at({}, "wrist disarticulation", "transradial")),
  shoulder: place(at({}, "transradial", "elbow disarticulation", "transhumeral", "shoulder disarticulation")),
  ankle: place(at({}, "partial foot")),
  knee: place(at({}, "partial foot", "ankle disarticulation", "transtibial")),
  hip: place(at({}, "transtibial", "knee disarticulation", "transfemoral")),

  // Upper limb
  "thumb web": place(at({}, "partial hand")),
  "metacarpal ends": place(at({ thirds: ["distal"] }, "partial hand"), "bony point", "distal end"),
  styloids: place([at({ ...side, thirds: ["distal"] }, "wrist disarticulation"), at({}, "partial hand")], "bony point"),
  "forearm bone ends": place(at({ thirds: ["distal"] }, "transradial"), "bony point", "distal end"),
  "ulnar border": place(
    at({ aspects: ["posterior", "medial"], thirds: ["middle", "distal"] }, "transradial", "wrist disarticulation"),
    "bony point",
  ),
  "fold of the elbow": place(at(proximal("anterior"), "transradial", "wrist disarticulation"), "brim"),
  "biceps tendon": place(at(proximal("anterior"), "transradial", "wrist disarticulation"), "tendon", "brim"),
  olecranon: place(at(proximal("posterior"), "transradial", "wrist disarticulation"), "bony point"),
  epicondyles: place(
    [
      at({ ...side, thirds: ["proximal"] }, "transradial", "wrist disarticulation"),
      at({ ...side, thirds: ["distal"] }, "elbow disarticulation"),
    ],
    "bony point",
  ),
  "ulnar groove": place(
    [at(proximal("medial"), "transradial", "wrist disarticulation"), at(distal("medial"), "elbow disarticulation")],
    "nerve",
  ),
  "humerus end": place(at({ thirds: ["distal"] }, "transhumeral"), "bony point", "distal end"),
  axilla: place(
    [at(proximal("medial"), "transhumeral", "elbow disarticulation"), at({}, "shoulder disarticulation")],
    "brim",
    "nerve",
  ),
  "harness axilla": place(
    at({}, "wrist disarticulation", "transradial", "elbow disarticulation", "transhumeral", "shoulder disarticulation"),
    "nerve",
  ),
  acromion: place([at(proximal("lateral"), "transhumeral"), at({}, "shoulder disarticulation")], "bony point"),
  clavicle: place(at({}, "transhumeral", "shoulder disarticulation"), "bony point"),
  scapula: place(at({}, "transhumeral", "shoulder disarticulation"), "bony point"),
  ribs: place(at({}, "shoulder disarticulation", "hip disarticulation"), "bony point"),

  // Lower limb
  "metatarsal ends": place(at({ thirds: ["distal"] }, "partial foot"), "bony point", "distal end"),
  instep: place(at({}, "partial foot")),
  heel: place([at({}, "partial foot"), at({ thirds: ["distal"] }, "ankle disarticulation")]),
  "Achilles tendon": place(at({}, "partial foot"), "tendon", "brim"),
  malleoli: place([at({ ...side, thirds: ["distal"] }, "ankle disarticulation"), at({}, "partial foot")], "bony point"),
  "tibia end": place(at(distal("anterior"), "transtibial"), "bony point", "distal end"),
  "fibula end": place(at(distal("lateral"), "transtibial"), "bony point", "distal end"),
  "tibial crest": place(
    at({ aspects: ["anterior"], thirds: ["middle", "distal"] }, "transtibial", "ankle disarticulation"),
    "bony point",
  ),
  "tibial tubercle": place(at(proximal("anterior"), "transtibial", "ankle disarticulation"), "bony point"),
  "patellar tendon": place(at(proximal("anterior"), "transtibial", "ankle disarticulation"), "tendon"),
  patella: place([at(proximal("anterior"), "transtibial"), at(distal("anterior"), "knee disarticulation")], "bony point"),
  "fibular head": place(at(proximal("lateral"), "transtibial", "ankle disarticulation"), "bony point", "nerve"),
  "medial tibial flare": place(at(proximal("medial"), "transtibial", "ankle disarticulation")),
  "back of the knee": place(at(proximal("posterior"), "transtibial", "ankle disarticulation"), "brim"),
  "hamstring tendons": place(at(proximal("posterior"), "transtibial", "ankle disarticulation"), "tendon", "brim"),
  "femoral condyles": place(
    [at({ ...side, thirds: ["proximal"] }, "transtibial"), at({ ...side, thirds: ["distal"] }, "knee disarticulation")],
    "bony point",
  ),
  "femur end": place(at(distal("lateral", "anterior"), "transfemoral"), "bony point", "distal end"),
  "greater trochanter": place(at(proximal("lateral"), "transfemoral", "knee disarticulation"), "bony point"),
  groin: place(at(proximal("anterior"), "transfemoral", "knee disarticulation"), "brim", "nerve"),
  "adductor area": place(at(proximal("medial"), "transfemoral", "knee disarticulation"), "brim"),
  pubis: place(
    [at(proximal("medial"), "transfemoral", "knee disarticulation"), at({}, "hip disarticulation")],
    "bony point",
    "brim",
  ),
  perineum: place(
    [at(proximal("medial"), "transfemoral", "knee disarticulation"), at({}, "hip disarticulation")],
    "brim",
    "nerve",
  ),
  ischium: place(
    [at(proximal("posterior", "medial"), "transfemoral", "knee disarticulation"), at({}, "hip disarticulation")],
    "bony point",
    "brim",
  ),
  "gluteal brim": place(at(proximal("posterior"), "transfemoral", "knee disarticulation"), "brim"),
  "iliac crest": place(at({}, "hip disarticulation"), "bony point"),
  "iliac spine": place(at({}, "transfemoral", "knee disarticulation", "hip disarticulation"), "bony point"),
  sacrum: place(at({}, "hip disarticulation"), "bony point"),
} as const satisfies Record<string, Place>;

export type FindingPlace = keyof typeof placeTable;

// Object.keys forgets the literal names; the table has no others.
export const findingPlaces = Object.keys(placeTable) as FindingPlace[];

export const isFindingPlace = (name: string): name is FindingPlace => Object.hasOwn(placeTable, name);

const spansOf = (name: FindingPlace): readonly Span[] => placeTable[name].spans;

export const levelsOfPlace = (name: FindingPlace): readonly Level[] => spansOf(name).flatMap((span) => span.levels);

/** Whether the first place is a kind of the second, as the olecranon is a bony point. */
export const isWithin = (name: FindingPlace, wider: FindingPlace): boolean =>
  (placeTable[name].within as readonly string[]).includes(wider);

/**
 * Places of a level that a spot on the limb map may be. A place that is on one aspect only is thought of where the
 * aspect is said, and the same for thirds: of what is not said nothing is guessed.
 */
export function placesAt(
  level: Level,
  { aspect, third }: { aspect?: Aspect | undefined; third?: Third | undefined },
): FindingPlace[] {
  const meets = (span: Span): boolean =>
    span.levels.includes(level) &&
    (span.aspects ?? span.thirds) !== undefined &&
    (span.aspects === undefined || (aspect !== undefined && span.aspects.includes(aspect))) &&
    (span.thirds === undefined || (third !== undefined && span.thirds.includes(third)));
  return findingPlaces.filter((name) => spansOf(name).some(meets));
}
