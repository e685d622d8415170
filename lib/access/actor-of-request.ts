import type { Actor } from "./actor";
import { currentActor } from "./session";
import { actorOfPass } from "./wearer-pass";

/**
 * Who sends this request: the wearer whose pass it bears, else the account that has signed in. A request with a pass that
 * does not hold is nobody's, whoever is signed in on the same device.
 */
export async function actorOfRequest(request: Request): Promise<Actor | null> {
  const pass = passOf(request);
  return pass === null ? currentActor() : actorOfPass(pass);
}

/** The pass that a request bears; null where it bears none. */
export function passOf(request: Request): string | null {
  const [scheme = "", pass = ""] = (request.headers.get("authorization") ?? "").split(" ");
  return scheme.toLowerCase() === "bearer" ? pass : null;
}
