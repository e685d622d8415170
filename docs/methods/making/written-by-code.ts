/** The first line of a page that nobody edits. */
export const writtenByCode = (from: string): string =>
  `<!-- Written by \`npm run docs\` from ${from}: what is changed here is lost. -->`;
