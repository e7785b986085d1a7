// Keeps the whole page on the device: after the first load nothing is fetched any more. The build fills in the
// version and the list of files; a new version is fetched as a whole before it takes over.
const CACHE = "rimewise-__VERSION__";
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
      .then((names) =>
        Promise.all(
          names.filter((name) => name.startsWith("rimewise-") && name !== CACHE).map((name) => caches.delete(name)),
        ),
      )
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== self.location.origin) return;
  event.respondWith(
    caches
      .match(event.request.mode === "navigate" ? "./" : event.request, { ignoreSearch: true })
      .then((kept) => kept ?? fetch(event.request)),
  );
});
