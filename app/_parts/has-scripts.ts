import { useSyncExternalStore } from "react";

/** False on the server and until the page has come alive: what only scripts can do is not offered before. */
export const useHasScripts = (): boolean =>
  useSyncExternalStore(
    () => () => undefined,
    () => true,
    () => false,
  );
