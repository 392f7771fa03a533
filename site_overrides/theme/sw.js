/* When: the events of the service worker. How is in sw/how.js, what in sw/what.js. */

import { dropOthers, install, reply } from "./sw/how.js";
import { SAVING, pathOf } from "./sw/what.js";

/* Written here by site_overrides/build/offline.py: a new release is a new file. */
const RELEASE = { key: "@key@", digest: "@digest@", scope: self.registration.scope };

self.addEventListener("install", (event) => {
  event.waitUntil(install(RELEASE));
});

self.addEventListener("activate", (event) => {
  event.waitUntil(dropOthers(RELEASE).then(() => self.clients.claim()));
});

let keeping = null; // what was cleared, on its way back

self.addEventListener("message", (event) => {
  if (event.data === "take over") self.skipWaiting();
  if (event.data !== "keep the text") return;
  keeping ??= install(RELEASE).finally(() => { keeping = null; });
  const tell = (isKept) => event.ports[0]?.postMessage(isKept);
  event.waitUntil(keeping.then(() => tell(true), () => tell(false)));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const path = pathOf(request.url, RELEASE.scope);
  if (request.method !== "GET" || path === null || request.headers.has(SAVING)) return;
  event.respondWith(reply(event, RELEASE, path));
});
