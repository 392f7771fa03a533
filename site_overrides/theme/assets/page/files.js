/* Files that an answer offers: a button for each, wherever the answer is shown. */

import { offerFile } from "./file.js";
import { button, element } from "./page.js";
import { ask } from "./starter.js";

const FAILED = "The file could not be made here: look at the messages beside the fields.";

function fill(place, request) {
  place.dataset.mounted = "";
  place.hidden = false;
  const line = element("p", { role: "status" });
  for (const spot of Array.from(place.querySelectorAll("[data-file]"))) {
    spot.replaceWith(button(spot.textContent, async () => {
      line.textContent = "Making the file.";
      const { calculator, texts } = request();
      const file = { calculator, texts, name: spot.dataset.file };
      const reply = await ask({ file }).catch(() => ({}));
      if (reply.text === undefined) line.textContent = reply.errors?.[0]?.message || FAILED;
      else offerFile(line, { ...reply, words: `Open ${reply.name}`, after: ". It is of the values in the form now." });
    }));
  }
  place.append(line);
}

/* `request` gives the calculator and the texts that stand in its form. */
export function mountFiles(block, request) {
  const mount = () => {
    for (const place of block.querySelectorAll("[data-files]:not([data-mounted])")) fill(place, request);
  };
  block.addEventListener("answer", mount);
  mount();
}
