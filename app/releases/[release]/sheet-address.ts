import { siteAddress } from "@/lib/access/address";

/** What the code on a sheet opens: the sheet as it stands now, compared with the digest on the paper. */
export const sheetAddress = ({ id, digest }: { id: string; digest: string }): string =>
  new URL(`/releases/${id}?digest=${digest}`, siteAddress()).href;
