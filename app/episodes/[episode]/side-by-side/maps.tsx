import { viewWords } from "@/app/_parts/limb-drawing";
import { LimbMap } from "@/app/_parts/limb-map";
import { mapGeometry } from "@/app/_parts/limb-map-geometry";
import type { MapMark } from "@/app/_parts/limb-map-marks";
import { type DrawnLimb, limbShapeOf } from "@/app/_parts/limb-shape";
import { changeShapes, changeWords } from "@/app/_parts/mark-changes";
import { placeWords } from "@/app/_parts/mark-words";
import { counted } from "@/app/_parts/numbers";
import { type Bundle, gradeMark, type MarkedPlace, type Occasion, type PlaceWithSocket, type SkinFindings } from "@/lib/fit";
import type { Comparison, SocketColumn } from "./comparison";
import styles from "./side-by-side.module.css";

const after: Record<Occasion, string> = { trial: "after the trial", fitting: "after the fitting" };

/** The limb maps in a row on one scale; places keep their letters from map to map. */
export function Maps({ comparison, bundle }: { comparison: Comparison; bundle: Bundle }) {
  const { sockets, occasion, places } = comparison;
  const shapes = shapesOf(sockets);
  const own = sockets.filter((socket) => socket.own);
  const first = shapes[0];
  const hasCome = places.some(({ sockets: cells }) => cells.some((cell) => cell?.fate === "gone"));
  return (
    <section aria-labelledby="skin" className={styles.skin}>
      <h2 id="skin">Where the skin was marked</h2>
      {hasCome && (
        <label className={`${styles.pick} not-on-paper`}>
          <input type="checkbox" defaultChecked />
          Show where marks have gone, dotted and struck through
        </label>
      )}
      <div className={styles.maps}>
        {sockets.map((socket, column) => (
          <SocketMap
            key={socket.socketId}
            socket={socket}
            shape={shapes[column]}
            skin={skinOf(comparison, column)}
            occasion={occasion}
            places={socket.own ? cellsOf(places, own.indexOf(socket)) : undefined}
          />
        ))}
      </div>
      {first && (
        <p className="soft">
          {viewWords(first, mapGeometry(first))} {first.trimWords}
        </p>
      )}
      {places.length > 0 && <Places places={places} sockets={own} bundle={bundle} occasion={occasion} />}
    </section>
  );
}

interface Skin {
  occasion: Occasion;
  found: SkinFindings;
}

/** After the occasion that they are compared on, or else after the other one. */
function skinOf({ columns, occasion }: Comparison, column: number): Skin | undefined {
  const findings = columns[column]?.findings;
  const other: Occasion = occasion === "trial" ? "fitting" : "trial";
  for (const one of [occasion, other]) {
    const found = findings?.[one]?.skin;
    if (found) return { occasion: one, found };
  }
  return undefined;
}

/** All go up equally far, so that those of one limb have one scale. */
function shapesOf(sockets: readonly SocketColumn[]): DrawnLimb[] {
  const shapes = sockets.map(({ seen, socketId }) =>
    limbShapeOf(
      seen.bundle,
      seen.episode.sockets.find(({ id }) => id === socketId),
    ),
  );
  const reaches = shapes.flatMap(({ reachMm }, column) => (sockets[column]?.own && reachMm !== undefined ? [reachMm] : []));
  const reachMm = reaches.length === 0 ? undefined : Math.max(...reaches);
  return shapes.map((shape, column) => (sockets[column]?.own ? { ...shape, reachMm } : shape));
}

interface PlaceHere {
  name: string;
  here: PlaceWithSocket | undefined;
  /** The mark of the last socket before that had one there. */
  before: PlaceWithSocket | undefined;
}

const cellsOf = (places: readonly MarkedPlace[], column: number): PlaceHere[] =>
  places.map(({ name, sockets }) => ({
    name,
    here: sockets[column],
    before: sockets.slice(0, column).findLast((cell) => cell?.mark),
  }));

interface SocketMapProps {
  socket: SocketColumn;
  shape: DrawnLimb | undefined;
  skin: Skin | undefined;
  occasion: Occasion;
  /** Missing for a socket of another limb, whose marks are at places of their own. */
  places: readonly PlaceHere[] | undefined;
}

function SocketMap({ socket, shape, skin, occasion, places }: SocketMapProps) {
  if (!skin || !shape)
    return (
      <article>
        <h3>{socket.name}</h3>
        <p className="soft">The skin was not looked at.</p>
      </article>
    );
  const { found } = skin;
  const isCompared = places !== undefined && skin.occasion === occasion;
  const graded = (mark: SkinFindings["marks"][number], number: number | string): MapMark => ({
    ...mark,
    number,
    grade: gradeMark(mark, found.lookedAtMin),
  });
  const marks = isCompared
    ? places.flatMap(({ name, here }) => (here?.mark ? [graded(here.mark, name)] : []))
    : found.marks.map((mark, index) => graded(mark, index + 1)).filter(({ grade }) => grade > 0);
  const gone = isCompared
    ? places.flatMap(({ name, here, before }) => (here?.fate === "gone" && before?.mark ? [graded(before.mark, name)] : []))
    : [];
  const when = found.lookedAtMin === undefined ? "" : `, ${counted(found.lookedAtMin, "minute")} after doffing`;
  return (
    <article>
      <h3>{socket.name}</h3>
      <p className="soft">
        {after[skin.occasion]}
        {when}
        {!isCompared && places !== undefined && ": another occasion, so its marks are not compared"}
      </p>
      <LimbMap title={`Marks with ${socket.name} ${after[skin.occasion]}`} {...shape} marks={marks} gone={gone} withKey={false} />
      {marks.length === 0 && <p>No mark.</p>}
    </article>
  );
}

interface PlacesProps {
  places: readonly MarkedPlace[];
  sockets: readonly SocketColumn[];
  bundle: Bundle;
  occasion: Occasion;
}

/** The same as the maps in words: each place, its grade with each socket, and what became of it. */
function Places({ places, sockets, bundle, occasion }: PlacesProps) {
  const { limbLengthMm } = bundle.episode;
  return (
    <table className={`${styles.places} ${styles.stacking}`}>
      <caption className="soft">
        Places {after[occasion]}, by the letters of the maps. Two marks are at one place where they overlap by a fifth of the
        smaller one.
      </caption>
      <thead>
        <tr>
          <th scope="col">place</th>
          {sockets.map(({ socketId, name }) => (
            <th key={socketId} scope="col">
              {name}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {places.map(({ name, sockets: cells }) => {
          const mark = cells.find((cell) => cell?.mark)?.mark;
          return (
            <tr key={name}>
              <th scope="row">
                <strong>{name}</strong> {mark && placeWords(mark, limbLengthMm)}
              </th>
              {cells.map((cell, column) => (
                <td key={sockets[column]?.socketId}>
                  <span className={styles.narrow}>{sockets[column]?.name}: </span>
                  <PlaceCell cell={cell} />
                </td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  );
}

function PlaceCell({ cell }: { cell: PlaceWithSocket | undefined }) {
  if (!cell) return <span className="soft">not looked at</span>;
  const { grade, fate } = cell;
  return (
    <>
      {grade > 0 ? `grade ${grade}` : fate === "gone" ? "" : "–"}
      {fate && (
        <span className={fate === "harder" || fate === "new" ? styles.harder : undefined}>
          {" "}
          <span aria-hidden="true" className={styles.shape}>
            {changeShapes[fate]}
          </span>
          {changeWords[fate]}
        </span>
      )}
    </>
  );
}
