import type { MapGeometry } from "./limb-map-geometry";
import type { MarksAction } from "./mark-editor-state";

interface Pressed {
  key: string;
  shiftKey: boolean;
  altKey: boolean;
  ctrlKey: boolean;
  metaKey: boolean;
}

const stepMm = 1;
const stepDeg = 2;
const farther = 5;

/**
 * What a key does to the chosen mark on the map: arrows move it as the eye expects, + and − change its size, with Alt the
 * arrows change one side, Delete takes it away, Escape leaves it. On the distal end up and down are outwards and inwards.
 */
export function actionOfKey(
  { key, shiftKey, altKey, ctrlKey, metaKey }: Pressed,
  row: number,
  { lateralSign, reachMm }: Pick<MapGeometry, "lateralSign" | "reachMm">,
): MarksAction | undefined {
  if (ctrlKey || metaKey) return undefined;
  const times = shiftKey ? farther : 1;
  const [right, up] = [
    Number(key === "ArrowRight") - Number(key === "ArrowLeft"),
    Number(key === "ArrowUp") - Number(key === "ArrowDown"),
  ];
  if (right !== 0 || up !== 0) {
    if (altKey) return { does: "grow", row, widthMm: right * times * stepMm, heightMm: up * times * stepMm };
    return { does: "nudge", row, aroundDeg: right * lateralSign * times * stepDeg, alongMm: up * times * stepMm, reachMm };
  }
  // Shift is part of typing a plus on many keyboards: it does not mean more here.
  if (key === "+" || key === "=") return { does: "grow", row, widthMm: stepMm, heightMm: stepMm };
  if (key === "-" || key === "−" || key === "_") return { does: "grow", row, widthMm: -stepMm, heightMm: -stepMm };
  if (key === "Delete" || key === "Backspace") return { does: "remove", row };
  if (key === "Escape") return { does: "choose", row: null };
  return undefined;
}
