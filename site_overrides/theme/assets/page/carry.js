/* A link to another page that takes the values of a calculator of this page with it. */

import { linkOf } from "./form.js";

export function mountCarry(anchor) {
  anchor.addEventListener("click", () => {
    const link = linkOf(anchor.dataset.carry);
    if (link) anchor.search = new URL(link).search;
  });
}
