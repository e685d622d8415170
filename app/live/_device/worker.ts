/**
 * Keeps the two live pages and their few files on the device, so that they open and reload with no network. Records do
 * not pass through here: the page itself keeps those.
 */
declare const liveFiles: readonly string[];
declare const liveVersion: string;

interface WaitingEvent extends Event {
  waitUntil: (work: Promise<unknown>) => void;
}
interface AskedEvent extends WaitingEvent {
  request: Request;
  respondWith: (answer: Promise<Response>) => void;
}
interface Worker {
  addEventListener(kind: "install" | "activate", listener: (event: WaitingEvent) => void): void;
  addEventListener(kind: "fetch", listener: (event: AskedEvent) => void): void;
  skipWaiting: () => Promise<void>;
  clients: { claim: () => Promise<void> };
  location: Location;
}
const worker = self as unknown as Worker; // TypeScript has either the types of pages or those of workers

const prefix = "fitting-ledger-live-";
const cacheName = `${prefix}${liveVersion}`;
/** A network that is there and does not answer is as good as none. */
const patienceMs = 3_000;

worker.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(cacheName)
      .then((cache) => cache.addAll(liveFiles))
      .then(() => worker.skipWaiting()),
  );
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(names.filter((name) => name.startsWith(prefix) && name !== cacheName).map((name) => caches.delete(name))),
      )
      .then(() => worker.clients.claim()),
  );
});

worker.addEventListener("fetch", (event) => {
  const { pathname, origin } = new URL(event.request.url);
  if (event.request.method !== "GET" || origin !== worker.location.origin || !liveFiles.includes(pathname)) return;
  event.respondWith(isPage(pathname) ? networkFirst(event.request, pathname) : keptFirst(event.request, pathname));
});

const isPage = (pathname: string): boolean => !pathname.includes(".");

async function networkFirst(request: Request, pathname: string): Promise<Response> {
  try {
    const answer = await fetch(request, { signal: AbortSignal.timeout(patienceMs) });
    if (answer.ok) return answer;
  } catch {
    // No network: what is kept is as good.
  }
  return keptFirst(request, pathname);
}

async function keptFirst(request: Request, pathname: string): Promise<Response> {
  return (await caches.match(pathname)) ?? fetch(request);
}
