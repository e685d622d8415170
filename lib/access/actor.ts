import type { Role } from "./roles";

/** Who asks: an account that has signed in, or a wearer by the link of their own. */
export interface Actor {
  /** Of the account, or of the link. */
  id: string;
  name: string;
  role: Role;
  credentialsLine?: string | undefined;
  /** The one wear trial that a wearer's own link opens. */
  onlyTrial?: string | undefined;
  /** What became of that link since the device opened it. */
  linkState?: LinkState | undefined;
}

export type LinkState = "open" | "expired" | "withdrawn";
