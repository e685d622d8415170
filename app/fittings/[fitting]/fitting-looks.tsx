import { LimbMap } from "@/app/_parts/limb-map";
import { limbShapeOf } from "@/app/_parts/limb-shape";
import { MarkList } from "@/app/_parts/mark-list";
import { markAt } from "@/app/_parts/mark-numbers";
import { counted } from "@/app/_parts/numbers";
import { type Bundle, type Inspection, isThere } from "@/lib/fit";
import styles from "./fitting.module.css";

interface LooksProps {
  looks: readonly Inspection[];
  bundle: Bundle;
  /** The number of each mark, by its id. */
  numbers: ReadonlyMap<string, number>;
}

/** Every look at the skin of one version of a fitting: its map, and its marks as a list under the same numbers. */
export function Looks({ looks, bundle, numbers }: LooksProps) {
  if (looks.length === 0) return <p className="soft">The skin was not looked at.</p>;
  return (
    <div className={styles.looks}>
      {looks.map((look) => {
        const when = `${counted(look.minutesAfterDoffing, "minute")} after doffing`;
        const marks = look.marks.map((mark) => markAt(look, mark, numbers)).sort((a, b) => a.number - b.number);
        return (
          <article key={look.id} aria-label={`Look ${when}`}>
            <h3>{when}</h3>
            <LimbMap
              title={`Marks ${when}`}
              {...limbShapeOf(bundle)}
              marks={marks.filter(isThere)}
              gone={marks.filter((mark) => !isThere(mark))}
            />
            <MarkList caption={`Marks ${when}`} limbLengthMm={bundle.episode.limbLengthMm} marks={marks} />
          </article>
        );
      })}
    </div>
  );
}
