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
  read: (db: Database, asked: Asked, actor: Actor) => Promise<Found>;
  /** What the trail says of this reading; left out where nobody's health record is shown. */
  seen?: (found: Found) => Seen;
}

export function query<Asked, Found>({
  permission,
  read,
  seen,
}: QueryParts<Asked, Found>): (actor: Actor, asked: Asked) => Promise<Found> {
  return async (actor, asked) => {
    if (!may(actor, permission)) throw new NotAllowed(permission, actor.role);
    await settleDue();
    const found = await read(await database(), asked, actor);
    if (seen) await inTransaction(actor, (store) => store.note(seen(found)), { readsDerived: false });
    return found;
  };
}
