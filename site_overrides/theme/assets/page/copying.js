/* Copying: the clipboard where the browser lets us, else a box to copy from. */

import { element } from "./page.js";

function showBox(place, title, text) {
  place.querySelector("[data-copy-box]")?.remove();
  const label = element("label", { text: `${title}: copy it from here`, data: { copyBox: "" } });
  const box = element("textarea", { readonly: "", rows: "4" });
  box.value = text;
  label.append(box);
  place.append(label);
  box.focus();
  box.select();
}

function sayCopied(place, title) {
  let line = place.querySelector("[data-copied]");
  if (!line) {
    line = element("p", { role: "status", data: { copied: "" } });
    place.append(line);
  }
  line.textContent = `${title}: copied.`;
}

export async function copyOrShow(place, title, text) {
  try {
    await navigator.clipboard.writeText(text);
    place.querySelector("[data-copy-box]")?.remove();
    sayCopied(place, title);
  } catch {
    showBox(place, title, text);
  }
}

/* As `copyOrShow`, with what is said put directly behind the button that was pressed. */
export function copyText(pressed, title, text) {
  let place = pressed.nextElementSibling;
  if (!place?.matches("[data-copy-place]")) {
    place = element("div", { class: "bb-copied", data: { copyPlace: "" } });
    pressed.after(place);
  }
  return copyOrShow(place, title, text);
}

export async function share(place, what) {
  try {
    await navigator.share(what);
  } catch (error) {
    if (error.name !== "AbortError") copyOrShow(place, "The answer as text", what.text);
  }
}
