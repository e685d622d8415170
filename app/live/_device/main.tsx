import "@fontsource-variable/source-sans-3";
import "@fontsource-variable/source-serif-4";
import "../../tokens.css";
import "./live.css";
import { createRoot } from "react-dom/client";
import { LiveApp } from "./live-app";
import { openStore } from "./store";

const place = document.getElementById("live");
if (place) {
  // A browser may keep nothing for this page: the trial runs all the same, and says so.
  const db = await openStore().catch(() => null);
  createRoot(place).render(<LiveApp db={db} />);
}
// Another trial, or another link, opened in the same tab.
window.addEventListener("hashchange", () => window.location.reload());
void navigator.serviceWorker?.register("/live/worker.js", { scope: "/live/" }).catch(() => undefined);
// Asked for without a question where the browser decides itself; what is kept is then not cleared when space runs short.
void navigator.storage?.persist?.().catch(() => undefined);
