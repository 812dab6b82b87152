/// <reference lib="webworker" />
// Keeps the whole page on the device: every built file is stored when the page is first opened, and from then on
// the stored copy answers, network or not. A new build has a new name and takes over on the next visit.
const worker = globalThis as unknown as ServiceWorkerGlobalScope;
const files: readonly string[] = "BUILT_FILES" as unknown as readonly string[];
const cacheName = "laywright-BUILD_NAME";

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

worker.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== worker.location.origin) return;
  event.respondWith(
    (async () => {
      const cache = await caches.open(cacheName);
      const wanted = event.request.mode === "navigate" ? "./" : event.request;
      return (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(event.request);
    })(),
  );
});
