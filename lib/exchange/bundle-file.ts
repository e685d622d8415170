import type { Bundle } from "@/lib/fit";

/** A bundle as the text of a file: two spaces, a newline at the end, fields in the order of the schema. */
export const writeBundle = (bundle: Bundle): string => `${JSON.stringify(bundle, null, 2)}\n`;
