/* A file made on this page, offered to be saved; nothing is sent for it. */

import { element } from "./page.js";

let address = null;

/* Put a link to the file before a sentence on a line, and follow it once. */
export function offerFile(line, { text, type, name, words, after }) {
  if (address) URL.revokeObjectURL(address);
  address = URL.createObjectURL(new Blob([text], { type }));
  const link = element("a", { text: words, href: address, download: name });
  line.replaceChildren(link, after);
  link.click();
}
