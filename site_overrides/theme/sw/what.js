/* What: names and lists made from a release's manifest. No fetching, no storage. */

export const MANIFEST = "release.json";
export const SAVED = "release.json?saved";
export const SAVING = "x-saving"; // header of a download that the page itself checks and keeps

const PREFIX = "benchbook-";

export const cacheName = (key) => PREFIX + key;

export const isOurs = (name) => name.startsWith(PREFIX);

export const addressOf = (path, scope) => new URL(path, scope).href;

/* Path of an address as the manifest writes it, or null outside the site.
   Queries are the reader's values, so they never choose a file; `page/` is the
   one name of a page, as Safari refuses what a redirect has led to. */
export function pathOf(address, scope) {
  const url = new URL(address);
  const bare = url.origin + url.pathname;
  if (!bare.startsWith(scope)) return null;
  return decodeURIComponent(bare.slice(scope.length)).replace(/(^|\/)index\.html$/, "$1");
}

/* Names under which a file may be kept: the engine keeps unpacked what came packed. */
export function addressesOf(path, manifest, scope) {
  const { unpacked } = manifest.files[path];
  return [path, ...(unpacked ? [unpacked] : [])].map((name) => addressOf(name, scope));
}

export const pathsOf = (manifest, role) =>
  Object.keys(manifest.files).filter((path) => !role || manifest.files[path].role === role);

export const bytesOf = (manifest, paths) =>
  paths.reduce((sum, path) => sum + manifest.files[path].bytes, 0);
