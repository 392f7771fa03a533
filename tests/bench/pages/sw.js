/* Answers from the caches, as the site's own service worker does. */
self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));
self.addEventListener("fetch", (event) => {
  event.respondWith(caches.match(event.request).then((kept) => kept ?? fetch(event.request)));
});
