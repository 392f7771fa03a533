/* What a reader does with an answer: clear, reset, copy and share. */

import { copyOrShow, share } from "./copying.js";
import { mountLesson } from "./lesson.js";
import { printOnePage } from "./one_page.js";
import { button } from "./page.js";
import { mountSquare } from "./square.js";
import { answerText } from "./summary.js";

export function mountTools(block, { fields, calculate, link, linkWith, reset, clearExamples }) {
  const place = block.querySelector("[data-tools]");
  const note = block.querySelector("[data-example-note]");
  const clear = button("Clear the examples", () => {
    clearExamples();
    refresh();
  });
  note?.after(clear);
  const square = mountSquare(block, link);

  const resetButton = () => button(note ? "Back to the examples" : "Empty the form", () => {
    reset();
    refresh();
  });

  /* Asked for again, so that the words are those of what stands in the form now. */
  const text = async () => {
    const reply = await calculate({ all: true });
    return reply ? answerText(reply.answer, link()) : null;
  };

  place?.append(
    button("Copy link", () => copyOrShow(place, "Link with these values", link())),
    button("Copy as text", async () => {
      const words = await text();
      if (words) copyOrShow(place, "The answer as text", words);
    }),
    square.button,
    button("Print on one page", async () => {
      if (await calculate({ all: true })) {
        await square.draw();
        printOnePage(block);
      }
    }),
  );
  if (navigator.share) {
    place?.append(button("Share", async () => {
      const words = await text();
      if (words) share(place, { title: document.title, text: words });
    }));
  }

  mountLesson(block, { fields, linkWith });

  function refresh() {
    if (note) note.hidden = !fields.some((field) => field.isExample);
    clear.hidden = !fields.some((field) => field.isExample && !field.isChoice);
  }

  refresh();
  return { refresh, resetButton, drawSquare: square.draw };
}
