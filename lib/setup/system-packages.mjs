// @ts-check
// What comes from Debian's packages where it is missing and we may install it.
import { isInstalled, lastLines, run } from "./run.mjs";
import { Stop } from "./stop.mjs";

/** Whether `apt-get install` is possible: Debian or a relative, and root. */
export function mayInstall() {
  return isInstalled("apt-get") && process.getuid?.() === 0;
}

/**
 * @param {string[]} names
 * @throws {Stop} where apt-get fails
 */
export async function installSystemPackages(names) {
  const env = { DEBIAN_FRONTEND: "noninteractive" };
  const install = () => run("apt-get", ["install", "-y", "--no-install-recommends", ...names], { env });
  // The lists may be fresh already; fetching them takes longer than trying.
  if ((await install()).code === 0) return;
  const update = await run("apt-get", ["update"], { env });
  const second = await install();
  if (second.code === 0) return;
  throw new Stop(
    `apt-get could not install ${names.join(", ")}:\n${lastLines(update.code === 0 ? second.output : update.output + second.output)}`,
    `Install ${names.join(", ")} by hand, then run the command again.`,
  );
}
