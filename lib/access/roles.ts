/** Who may do what: the one table. Commands and queries ask it; pages only hide what would be refused anyway. */

export const roles = ["prosthetist", "assistant", "technician", "administrator"] as const;
export type Role = (typeof roles)[number];

const clinicians = ["prosthetist", "assistant"] as const;
const bench = ["prosthetist", "assistant", "technician"] as const;
const everyone = roles;

const mayDo = {
  "see wearers": clinicians,
  "see socket orders": bench,
  "see release sheets": bench,
  "see figures": ["prosthetist", "assistant", "administrator"],
  "see rules": everyone,
  "see the record": ["prosthetist", "administrator"],
  "see accounts": ["administrator"],

  "add a wearer": clinicians,
  "change a wearer": clinicians,
  "acknowledge cautions": ["prosthetist"],
  "open an episode": clinicians,
  "change an episode": clinicians,
  "strike out an episode": ["prosthetist"],
  "measure a limb": clinicians,
  "specify a socket": ["prosthetist"],
  "move a socket": bench,
  "record a fitting": clinicians,
  "carry an adjustment": ["prosthetist"],
  "plan a wear trial": clinicians,
  "record a wear trial": clinicians,
  "look at the skin": clinicians,
  sign: ["prosthetist"],
  "withdraw a signature": ["prosthetist"],
  "deliver a socket": clinicians,
  "manage accounts": ["administrator"],
  "change a limit": ["administrator"],
} as const satisfies Record<string, readonly Role[]>;

export type Permission = keyof typeof mayDo;

export const may = (actor: { role: Role }, permission: Permission): boolean =>
  (mayDo[permission] as readonly Role[]).includes(actor.role);

export const isRole = (word: string): word is Role => (roles as readonly string[]).includes(word);

/** For the page of rules: every permission with the roles that have it. */
export const permissions = Object.entries(mayDo) as [Permission, readonly Role[]][];
