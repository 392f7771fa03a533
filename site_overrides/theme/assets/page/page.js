/* Small pieces of a page. Words are only ever put in as text. */

export const SITE = new URL("../../", import.meta.url).href;

export const megabytes = (bytes) => `${(bytes / 1e6).toFixed(1)} MB`;

/* The start of a foreign text in a sentence of ours: signs that cannot be seen, or
   would turn the sentence around, are marked. */
export const quoted = (text, most) => `“${text.slice(0, most).replace(/\p{C}/gu, "\ufffd")}”`;

export function element(kind, { text = "", data = {}, ...attributes } = {}) {
  const made = document.createElement(kind);
  made.textContent = text;
  Object.assign(made.dataset, data);
  for (const [name, value] of Object.entries(attributes)) made.setAttribute(name, value);
  return made;
}

export function button(text, onPress) {
  const made = element("button", { text, type: "button", class: "bb-button" });
  made.addEventListener("click", onPress);
  return made;
}

/* Storage of a browser may be full, forbidden or absent: then nothing is remembered. */
export function remembered(storage, key) {
  try {
    return window[storage].getItem(key);
  } catch {
    return null;
  }
}

export function remember(storage, key, value) {
  try {
    if (value === null) window[storage].removeItem(key);
    else window[storage].setItem(key, value);
  } catch {
    // nothing is remembered
  }
}
