/* What an answer on the page says, for the blocks beside it; nothing while it is stale. */

const blockOf = (calculator) => document.querySelector(`[data-calculator="${calculator}"]`);

function freshAnswer(calculator) {
  return blockOf(calculator)?.querySelector("[data-answer]:not([data-stale])") ?? null;
}

/* A result as it is read, and its exact value in SI, null where it is words. */
export function answered(calculator, result) {
  const row = freshAnswer(calculator)?.querySelector(`[data-result="${result}"]`);
  if (!row) return null;
  const si = "si" in row.dataset ? Number(row.dataset.si) : null;
  return { text: row.querySelector(".bb-value").textContent, si };
}

/* What it was worked from, and by which release. */
export function workedFrom(calculator) {
  const answer = freshAnswer(calculator);
  const lines = answer ? Array.from(answer.querySelectorAll(".bb-inputs li"), (line) => line.textContent) : [];
  if (!lines.length) return "";
  const title = blockOf(calculator).querySelector(".bb-title").textContent;
  return `${title}, worked from: ${lines.join("; ")}.`;
}

/* Whether the values are the reader's own, not the examples that the page came with. */
export const isOwn = (calculator) => "own" in (blockOf(calculator)?.dataset ?? {});

/* Hear of every new, stale or missing answer until the block has left the page. */
export function onAnswer(block, look) {
  document.addEventListener("answer", function hear() {
    if (block.isConnected) look();
    else document.removeEventListener("answer", hear);
  });
}
