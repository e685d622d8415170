import { dayAndTimeAt } from "@/app/_parts/dates";
import { LimbMap } from "@/app/_parts/limb-map";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { MarkList } from "@/app/_parts/mark-list";
import { counted } from "@/app/_parts/numbers";
import { type Assessment, type Bundle, gradeMark, trackMarks } from "@/lib/fit";

/** Where the skin was marked: the first look after the trial, or after the latest fitting where there was no trial. */
export function Marks({ bundle, assessment, headId }: { bundle: Bundle; assessment: Assessment; headId: string }) {
  const { subject } = assessment;
  const trial = bundle.wearTrials.find(({ id }) => id === subject?.trialId);
  const fitting = bundle.fittings.find(({ id }) => id === subject?.fittingId);
  const look = trial?.inspections[0] ?? fitting?.inspections[0];
  if (!look)
    return (
      <>
        <h2 id={headId}>Marks on the skin</h2>
        <p className="soft">The skin was not looked at with this socket yet.</p>
      </>
    );
  const tracked = trackMarks(trial?.inspections ?? fitting?.inspections ?? []);
  const fadedAtMin = (id: string) => tracked.find((mark) => mark.id === id)?.fade.highMin ?? null;
  const marks = look.marks.map((mark) => ({
    ...mark,
    fadedAtMin: fadedAtMin(mark.id),
    grade: gradeMark(mark, look.minutesAfterDoffing),
  }));
  return (
    <>
      <h2 id={headId}>Marks after the {trial ? "trial" : "fitting"}</h2>
      <p className="soft">
        {dayAndTimeAt(look.at, bundle.clinic.timeZone)}, {counted(look.minutesAfterDoffing, "minute")} after doffing
      </p>
      <LimbMap title="Marks on the skin" {...limbShapeOf(bundle)} marks={marks} />
      {marks.length > 0 && <MarkList caption="Marks on the skin" limbLengthMm={bundle.episode.limbLengthMm} marks={marks} />}
    </>
  );
}
