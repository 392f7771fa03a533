/* The learners' link of a set that the calculator on this page makes: to follow, to copy, as a square code. */

import { answered, onAnswer } from "./answered.js";
import { copyOrShow } from "./copying.js";
import { button, element } from "./page.js";
import { mountSquare } from "./square.js";

export function mountLearners(place) {
  const address = () => {
    const got = answered(place.dataset.learnersLink, "link");
    return got ? new URL(got.text, location.href.split("?")[0]).href : "";
  };
  const link = element("a");
  const line = element("p");
  const tools = element("div", { class: "bb-tools" });
  line.append(link);
  place.querySelector("[data-by-hand]").remove();
  place.append(line, tools);
  const square = mountSquare(place, address);
  tools.append(button("Copy the learners’ link", () => copyOrShow(tools, "The learners’ link", address())), square.button);

  function refresh() {
    const now = address();
    line.hidden = tools.hidden = !now;
    link.textContent = now;
    link.href = now;
    if (now && place.querySelector("[data-square] svg")) square.draw();
  }
  onAnswer(place, refresh);
  refresh();
}
