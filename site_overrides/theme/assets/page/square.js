/* The square code that opens this sheet on another phone, and from paper. */

import { button, element } from "./page.js";
import { ask } from "./starter.js";

export function mountSquare(block, link) {
  const place = element("div", { hidden: "", data: { square: "" } }); // the theme shows any figure
  const figure = element("figure", { class: "bb-square" });
  const code = element("div");
  const caption = element("figcaption");
  figure.append(code, caption);
  place.append(figure);
  block.append(place);
  let drawn = "";

  async function draw() {
    const address = link();
    if (address === drawn) return;
    drawn = address;
    const reply = await ask({ square: address }).catch(() => ({}));
    if (drawn !== address) return;
    code.innerHTML = reply.svg ?? "";
    caption.textContent = reply.errors?.[0].message ?? address;
  }

  const show = button("Square code", async () => {
    await draw();
    place.hidden = !place.hidden;
    show.setAttribute("aria-expanded", String(!place.hidden));
  });
  show.setAttribute("aria-expanded", "false");

  return { draw, button: show };
}

/* On paper a code always stands, once there is one. */
const hiddenOnScreen = new Set();

addEventListener("beforeprint", () => {
  for (const code of document.querySelectorAll("[data-square][hidden] svg")) {
    hiddenOnScreen.add(code.closest("[data-square]"));
  }
  for (const place of hiddenOnScreen) place.hidden = false;
});

addEventListener("afterprint", () => {
  for (const place of hiddenOnScreen) place.hidden = true;
  hiddenOnScreen.clear();
});
