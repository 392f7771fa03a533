/* A switch that keeps the screen on, and says so when the browser refuses. */

import { element } from "./page.js";

const REFUSED = "Refused: this browser or its battery saver lets the screen go dark. Set it in the phone’s own settings.";
const ON = "The screen stays on while this page is in front. It uses the battery.";

export function mountWake(place) {
  const box = element("input", { type: "checkbox", role: "switch", autocomplete: "off" });
  const label = element("label", { class: "bb-do" });
  const line = element("p", { role: "status", data: { wake: "" } });
  label.append(box, element("span", { text: "Keep the screen on" }));
  place.append(label, line);
  let lock = null;

  async function hold() {
    try {
      lock = await navigator.wakeLock.request("screen");
      lock.addEventListener("release", released);
      line.textContent = ON;
      if (!box.checked || !box.isConnected) drop();
    } catch {
      box.checked = false;
      line.textContent = REFUSED;
    }
  }

  function drop() {
    lock?.release().catch(() => {});
    lock = null;
  }

  /* The system lets go whenever the page is hidden, and may at any time. */
  function released() {
    lock = null;
    if (box.checked && document.visibilityState === "visible") {
      box.checked = false;
      line.textContent = "The phone let the screen go. Switch on again if you need it.";
    }
  }

  box.addEventListener("change", () => {
    if (box.checked) {
      hold();
    } else {
      drop();
      line.textContent = "";
    }
  });
  document.addEventListener("visibilitychange", function seen() {
    if (!box.isConnected) document.removeEventListener("visibilitychange", seen);
    else if (box.checked && !lock && document.visibilityState === "visible") hold();
  });
  const pages = window.document$?.subscribe(() => {
    if (box.isConnected) return;
    drop();
    pages?.unsubscribe();
  });
}
