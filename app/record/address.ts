/** What is looked for stands in the address. */

export const searchNames = ["who", "wearer", "record", "from", "to", "find", "reads"] as const;
export type SearchName = (typeof searchNames)[number];
export type Asked = Partial<Record<SearchName, string>>;

export type AddressParts = Record<string, string | string[] | undefined>;

/** As it was typed; of what stands there twice, the first. */
export function asked(parts: AddressParts): Asked {
  const found: Asked = {};
  for (const name of searchNames) {
    const value = [parts[name] ?? []].flat()[0];
    if (value !== undefined && value.trim() !== "") found[name] = value;
  }
  return found;
}

/** @example queryOf({ who: "Rosália" }, { page: "2" }) // => "?who=Ros%C3%A1lia&page=2" */
export function queryOf(search: Asked, more: Record<string, string> = {}): string {
  const query = new URLSearchParams({ ...search, ...more }).toString();
  return query === "" ? "" : `?${query}`;
}
