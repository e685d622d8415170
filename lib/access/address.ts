/** The address that browsers use for this site. */
export const siteAddress = (): string => process.env.BETTER_AUTH_URL ?? "http://localhost:3000";
