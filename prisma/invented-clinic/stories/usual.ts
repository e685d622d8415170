/** What most sockets of a level have in common, so that a story says only what is its own. */

export const transtibial = {
  opened: { level: "transtibial", landmark: "middle of the patellar tendon", stationsFrom: "proximal landmark" },
  socket: {
    material: "clear copolyester, bubble formed",
    wallMm: 8,
    trimLines: "Front edge at the middle of the kneecap, back edge 10 mm lower",
  },
  /** Millimetres between the levels at which the limb is measured. */
  levels: 30,
} as const;

export const transfemoral = {
  opened: { level: "transfemoral", landmark: "perineum", stationsFrom: "proximal landmark" },
  socket: {
    material: "clear copolyester, bubble formed",
    wallMm: 10,
    trimLines: "Inner edge 25 mm below the groin, outer edge over the hip",
  },
  levels: 50,
} as const;

/** Stations counted from the end of the limb upwards. */
export const fromTheEnd = { landmark: "distal end of the residual limb", stationsFrom: "distal end" } as const;

/** For an arm: thin, clear, read through the wall. */
export const clearArmSocket = { material: "clear copolyester, drape formed", wallMm: 5 } as const;
