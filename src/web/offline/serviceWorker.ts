/// <reference lib="webworker" />
// Keeps the whole page on the device: what it needs to stand is stored when it is first opened, export code and fonts
// once it is idle, and from then on the stored copy answers, network or not. A new build has a new name and takes over
// on the next visit.
const worker = globalThis as unknown as ServiceWorkerGlobalScope;
const files: readonly string[] = "BUILT_FILES" as unknown as readonly string[];
const later: readonly string[] = "LATER_FILES" as unknown as readonly string[];
const cacheName = "laywright-BUILD_NAME";
/** What is stored is the same for everybody, whatever a server says it varies by. */
const SAME = { ignoreSearch: true, ignoreVary: true } as const;

worker.addEventListener("install", (event) => {
  event.waitUntil(
    (async () => {
      const cache = await caches.open(cacheName);
      await cache.addAll(files);
      await worker.skipWaiting();
    })(),
  );
});

worker.addEventListener("activate", (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys())
        if (name.startsWith("laywright-") && name !== cacheName) await caches.delete(name);
      await worker.clients.claim();
    })(),
  );
});

worker.addEventListener("message", (event) => {
  if (event.data !== "keep the rest") return;
  event.waitUntil(
    (async () => {
      const cache = await caches.open(cacheName);
      // One after the other, so that the page's own requests find the line free.
      for (const file of later) if ((await cache.match(file, SAME)) === undefined) await cache.add(file);
      event.source?.postMessage("all kept");
    })().catch(() => undefined),
  );
});

worker.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== worker.location.origin) return;
  event.respondWith(
    (async () => {
      const cache = await caches.open(cacheName);
      const wanted = event.request.mode === "navigate" ? "./" : event.request;
      const stored = await cache.match(wanted, SAME);
      if (stored !== undefined) return stored;
      const response = await fetch(event.request);
      const isLater = later.some((file) => new URL(file, worker.location.href).href === url.href);
      if (isLater && response.ok) await cache.put(event.request, response.clone());
      return response;
    })(),
  );
});
