/* Saving the site on this device: a true status, a tap, bytes, and a way to stop. */

import { button, element, megabytes } from "./page.js";
import { canKeep, readKept, saveAll } from "./store.js";

const CANNOT = "This browser cannot keep the site. Print the tables you need.";
const WHY = {
  QuotaExceededError: "this device has no room for it",
  TypeError: "the line was cut",
};
const PHONE = "On an iPhone or iPad, add this site to the Home Screen (Share, then Add to Home Screen): what is saved for a site that was not opened for 7 days may be cleared otherwise.";

function isApplePhone() {
  const touchMac = /Macintosh/.test(navigator.userAgent) && navigator.maxTouchPoints > 1;
  return (/iPhone|iPad|iPod/.test(navigator.userAgent) || touchMac) && !navigator.standalone;
}

async function persistence() {
  const kept = await navigator.storage?.persist?.().catch(() => false);
  return kept
    ? "The browser promises to keep it until you remove it."
    : "The browser makes no promise: it may clear it when space is short.";
}

export function mountOffline(place) {
  const line = element("span", { role: "status", data: { offlineStatus: "" } });
  const bar = element("progress", { "aria-label": "Saved so far", hidden: "" });
  const note = element("span", { text: PHONE, hidden: "" });
  let stop = new AbortController();
  const save = button("Save for offline", saveNow);
  const cancel = button("Cancel", () => stop.abort());
  save.hidden = cancel.hidden = true;
  place.append(line, " ", bar, save, cancel, note);

  async function showKept() {
    if (!canKeep()) {
      line.textContent = CANNOT;
      return;
    }
    try {
      const { manifest, bytes, isInstalled, isReady, date } = await readKept();
      save.hidden = isReady;
      save.textContent = `Save for offline (${megabytes(bytes)})`;
      if (isReady) line.textContent = readyWords(manifest, date);
      else if (isInstalled) line.textContent = "The pages are saved on this device. The calculators are not.";
      else line.textContent = "Not saved on this device.";
    } catch {
      line.textContent = "Not saved on this device.";
    }
  }

  async function saveNow() {
    stop = new AbortController();
    save.hidden = true;
    bar.hidden = cancel.hidden = false;
    note.hidden = !isApplePhone();
    cancel.focus();
    line.textContent = "Saving.";
    let words;
    try {
      const promise = persistence();
      await saveAll((bytes, total) => {
        bar.max = total;
        bar.value = bytes;
        cancel.textContent = `Cancel (${megabytes(bytes)} of ${megabytes(total)})`;
      }, stop.signal);
      words = await promise;
    } catch (error) {
      const why = stop.signal.aborted ? "it was stopped midway" : WHY[error.name] ?? error.message;
      words = `Not saved: ${why}. What came whole stays, so saving again goes on from there.`;
    }
    bar.hidden = cancel.hidden = true;
    await showKept();
    line.textContent += ` ${words}`;
    if (!save.hidden) save.focus();
  }

  document.addEventListener("kept", function look() {
    if (place.isConnected) showKept();
    else document.removeEventListener("kept", look);
  });
  showKept();
}

function readyWords(manifest, date) {
  const saved = date ? `, saved ${new Date(date).toLocaleDateString(undefined, { dateStyle: "long" })}` : "";
  return `Ready offline, release ${manifest.release}${saved}.`;
}
