/* One calculator's answer on one sheet of paper, with the square code that opens it again. */

const root = document.documentElement;

export function printOnePage(block) {
  root.dataset.onePage = "";
  block.dataset.onPaper = "";
  print();
}

addEventListener("afterprint", () => {
  delete root.dataset.onePage;
  for (const block of document.querySelectorAll("[data-on-paper]")) delete block.dataset.onPaper;
});
