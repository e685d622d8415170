/** The one way to read: who may see it, the reading, and, where a person is named, an entry in the trail. */
import type { Actor } from "@/lib/access/actor";
import { may, type Permission } from "@/lib/access/roles";
import { inTransaction } from "./command";
import { type Database, database } from "./database";
import { settleDue } from "./derived-due";
import { NotAllowed } from "./refusals";

interface Seen {
  action: string;
  kind: string;
  id: string;
  wearerId?: string | undefined;
}

interface QueryParts<Asked, Found> {
  permission: Permission;
  /** Which wear trial is asked about. A query that says none refuses whoever may see only one trial. */
  ofTrial?: (asked: Asked) => string;
  read: (db: Database, asked: Asked, actor: Actor) => Promise<Found>;
  /** What the trail says of this reading; left out where nobody's health record is shown, null where it says so already. */
  seen?: (found: Found) => Seen | null;
}

export function query<Asked, Found>({
  permission,
  ofTrial,
  read,
  seen,
}: QueryParts<Asked, Found>): (actor: Actor, asked: Asked) => Promise<Found> {
  return async (actor, asked) => {
    if (!may(actor, permission)) throw new NotAllowed(permission, actor.role);
    if (actor.onlyTrial !== undefined && actor.onlyTrial !== ofTrial?.(asked)) throw new NotAllowed(permission, actor.role);
    await settleDue();
    const found = await read(await database(), asked, actor);
    const said = seen?.(found);
    if (said) await inTransaction(actor, (store) => store.note(said), { readsDerived: false });
    return found;
  };
}
