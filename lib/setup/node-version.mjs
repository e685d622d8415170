// The first thing each command looks at. Old syntax only: a Node that is too old must still be able to read this.

/** Ends the process with a sentence where this Node is too old for the packages. */
export function requireNode() {
  const [major, minor] = process.versions.node.split(".").map(Number);
  if ((major === 20 && minor >= 19) || (major === 22 && minor >= 12) || major >= 24) return;
  console.error(
    `Fitting Ledger needs Node 20.19 or newer (or 22.12 or newer, or 24 or newer). This is Node ${process.versions.node}.`,
  );
  console.error("Install a newer one from https://nodejs.org or your system's packages, then run the command again.");
  process.exit(1);
}
