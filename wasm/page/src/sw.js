// Keeps the whole page on the device: after the first load nothing is fetched any more. The build fills in the
// version and the list of files; a new version is fetched as a whole before it takes over. Caches belong to a whole
// origin, so every name holds this worker's own scope: another page of ours, or a second copy of this one under
// another path, keeps what is its own.
const OWN = `rimewise-page:${new URL(self.registration.scope).pathname}:`;
const CACHE = `${OWN}__VERSION__`;
const FILES = ["__FILES__"];

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(CACHE)
      .then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: "reload" }))))
      .then(() => self.skipWaiting()),
  );
});

self.addEventListener("activate", (event) => {
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(names.filter((name) => name.startsWith(OWN) && name !== CACHE).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || !event.request.url.startsWith(self.registration.scope) || url.origin !== self.location.origin) return;
  // The page itself, whatever stands behind its address; every other file under its own name.
  const page = event.request.mode === "navigate" && /\/(index\.html)?$/.test(url.pathname);
  event.respondWith(
    caches
      .open(CACHE)
      .then((cache) => cache.match(page ? "./" : event.request, { ignoreSearch: true }))
      .then((kept) => kept ?? fetch(event.request)),
  );
});
