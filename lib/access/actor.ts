import type { Role } from "./roles";

/** The person who asks: an account that has signed in. */
export interface Actor {
  id: string;
  name: string;
  role: Role;
  credentialsLine?: string | undefined;
}
