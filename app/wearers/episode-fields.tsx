import { DateField, NumberField, SelectField, TextArea, TextField } from "@/app/_parts/fields";
import { wordOptions } from "@/app/_parts/word-options";
import { causes, lowerLimbLevels, sides, suspensions, upperLimbLevels } from "@/lib/fit";

const fields = {
  side: "Side",
  level: "Level",
  cause: "Cause",
  lossOn: "Date of limb loss",
  landmark: "Landmark",
  stationsFrom: "Distances are measured from",
  limbLengthMm: "Residual-limb length",
  suspension: "Suspension",
  deviceMassKg: "Mass of the planned device",
  deviceCentreOfMassMm: "Distance of its centre of mass from the joint",
  deviceNote: "The device in words",
  goals: "What the wearer wants to do",
  targetOn: "Target date",
  prosthetistId: "Prosthetist who answers for it",
};
export const episodeLabels: Record<keyof typeof fields, string> = fields;

/** One limb, one prosthesis: what an episode is opened and changed with. */
export function EpisodeFields({
  first = {},
  prosthetists,
}: {
  first?: Partial<Record<keyof typeof fields, string | number | null>>;
  prosthetists: { id: string; name: string }[];
}) {
  const own = (name: keyof typeof fields) => ({
    name,
    label: fields[name],
    ...(first[name] === null || first[name] === undefined ? {} : { first: String(first[name]) }),
  });
  return (
    <>
      <SelectField {...own("side")} options={wordOptions(sides)} />
      <SelectField
        {...own("level")}
        options={[...upperLimbLevels, ...lowerLimbLevels].map((level) => ({ value: level, label: level }))}
        hint="By ISO 8549-4: upper limb first, then lower limb."
      />
      <SelectField {...own("cause")} options={wordOptions(causes)} />
      <DateField {...own("lossOn")} optional hint="Leave it empty for a congenital limb difference." />
      <NumberField {...own("limbLengthMm")} unit="mm" />
      <SelectField {...own("stationsFrom")} options={wordOptions(["distal end", "proximal landmark"])} />
      <TextField {...own("landmark")} hint="As it is found again: distal end, olecranon, mid-patellar tendon." />
      <SelectField {...own("suspension")} options={wordOptions(suspensions)} />
      <NumberField {...own("deviceMassKg")} unit="kg" optional />
      <NumberField {...own("deviceCentreOfMassMm")} unit="mm" optional hint="The load of a wear trial is compared with this." />
      <TextField {...own("deviceNote")} optional />
      <TextArea {...own("goals")} optional />
      <DateField {...own("targetOn")} optional />
      <SelectField {...own("prosthetistId")} options={prosthetists.map(({ id, name }) => ({ value: id, label: name }))} />
    </>
  );
}
