/** Who may do what: the one table. Commands and queries ask it; pages only hide what would be refused anyway. */

/** What an account can be. */
export const accountRoles = ["prosthetist", "assistant", "technician", "administrator"] as const;
export type AccountRole = (typeof accountRoles)[number];

/** "wearer" is no account: it is whoever opened a wearer's own link, and holds for one wear trial. */
export const roles = [...accountRoles, "wearer"] as const;
export type Role = (typeof roles)[number];

/** As the page of rules names them. */
export const roleWords: Readonly<Record<Role, string>> = {
  prosthetist: "prosthetist",
  assistant: "assistant",
  technician: "technician",
  administrator: "administrator",
  wearer: "wearer, by own link",
};

const clinicians = ["prosthetist", "assistant"] as const;
const bench = ["prosthetist", "assistant", "technician"] as const;
const everyone = accountRoles;

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
  "make a wearer's link": ["prosthetist"],
  "record a wear trial": [...clinicians, "wearer"],
  "look at the skin": [...clinicians, "wearer"],
  sign: ["prosthetist"],
  "withdraw a signature": ["prosthetist"],
  "check a made socket": bench,
  "acknowledge a release sheet": ["technician"],
  "answer the bench": ["prosthetist"],
  "deliver a socket": clinicians,
  "plan wearing": ["prosthetist"],
  "manage accounts": ["administrator"],
  "change a limit": ["administrator"],
} as const satisfies Record<string, readonly Role[]>;

export type Permission = keyof typeof mayDo;

/** A wearer without a trial may nothing. That the trial is the right one is seen to by each command. */
export const may = (actor: { role: Role; onlyTrial?: string | undefined }, permission: Permission): boolean =>
  (mayDo[permission] as readonly Role[]).includes(actor.role) && (actor.role !== "wearer" || actor.onlyTrial !== undefined);

export const isAccountRole = (word: string): word is AccountRole => (accountRoles as readonly string[]).includes(word);

/** For the page of rules: every permission with the roles that have it. */
export const permissions = Object.entries(mayDo) as [Permission, readonly Role[]][];
