/** From the fields of a fitting to the command's input, where they differ. */

/** The movement of a row is named `jointId`, so that a row without angles counts as free; what was told is ticked one by one. */
export function fittingFromForm({ motion, told, ...input }: Record<string, unknown>): Record<string, unknown> {
  return {
    ...input,
    ...(Array.isArray(motion) ? { motion: motion.map(withJoint) } : {}),
    ...(told === undefined ? {} : { reported: Object.keys(told as Record<string, unknown>) }), // only boxes are named `told.…`
  };
}

export const fieldOfFitting = (path: string): string =>
  path.replace(/^(motion\.\d+)\.joint$/, "$1.jointId").replace(/^reported(?:\.\d+)?$/, "told.checks");

function withJoint(row: unknown): unknown {
  if (typeof row !== "object" || row === null || !("jointId" in row)) return row;
  const { jointId, ...angles } = row;
  return { ...angles, joint: jointId };
}
