// Keeps the whole app on the phone: what belongs to it is served from here, with and without a line.

declare const DIGEST: string;
declare const FILES: readonly string[];
const here = self as unknown as ServiceWorkerGlobalScope;

const HERE = `backprobe-${DIGEST}`;
const OURS = "backprobe-";
const CARRIES_DIGEST = /\.[0-9a-f]{16}(\.|\/)/; // such a name stands for the same bytes in every version

/** Every file of this version into its own cache; what an older version has already is not loaded again. */
async function fill(): Promise<void> {
  const cache = await caches.open(HERE);
  for (const name of FILES) {
    const address = new URL(name, here.registration.scope).href;
    const old = CARRIES_DIGEST.test(name) ? await caches.match(address) : undefined;
    const response = old ?? (await fetch(new Request(address, { cache: "no-cache" })));
    if (!response.ok) throw new Error(`${name}: ${response.status}`);
    await cache.put(address, response);
  }
}

async function dropOlder(): Promise<void> {
  for (const name of await caches.keys()) if (name.startsWith(OURS) && name !== HERE) await caches.delete(name);
  await here.clients.claim();
}

/** The desk is kept on no phone. */
const isDesk = (request: Request): boolean => new URL(request.url).pathname === new URL("desk.html", here.registration.scope).pathname;

async function served(request: Request): Promise<Response> {
  const cache = await caches.open(HERE);
  const page = request.mode === "navigate" && !isDesk(request) ? new URL("index.html", here.registration.scope).href : request;
  return (await cache.match(page, { ignoreSearch: true })) ?? fetch(request);
}

here.addEventListener("install", (event) => event.waitUntil(fill()));
here.addEventListener("activate", (event) => event.waitUntil(dropOlder()));
here.addEventListener("message", (event) => {
  if (event.data === "take over") void here.skipWaiting();
});
here.addEventListener("fetch", (event) => {
  const { origin, pathname } = new URL(event.request.url);
  const ours = origin === here.location.origin && !pathname.startsWith(new URL("api/", here.registration.scope).pathname);
  if (ours && event.request.method === "GET") event.respondWith(served(event.request));
});

export {};
