import type { Role } from "./roles";

/** The person who asks: an account that has signed in. */
export interface Actor {
  id: string;
  name: string;
  role: Role;
  credentialsLine?: string | undefined;
  /** Who came by a wearer's own link: this wear trial, and nothing else. */
  onlyTrial?: string | undefined;
}
