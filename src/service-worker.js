/**
 * Keeps the built page on the device, so that it opens in a workshop without a network. `files` and `version` are
 * filled in by src/setup/offline.mjs when the page is built; a new build waits until the person asks for it.
 */
const version = "__VERSION__";
const files = __FILES__;
const store = `halfangle-${version}`;

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(store)
      .then((cache) => cache.addAll(files.map((file) => new Request(file, { cache: "reload" })))),
  );
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) =>
        Promise.all(
          names
            .filter((name) => name.startsWith("halfangle-") && name !== store)
            .map((name) => caches.delete(name)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== self.location.origin) return;
  const wanted =
    request.mode === "navigate" ? new URL("./index.html", self.location.href).href : address.href;
  event.respondWith(
    caches
      .open(store)
      .then((cache) => cache.match(wanted, { ignoreVary: true }))
      .then((kept) => kept ?? fetch(request)),
  );
});
