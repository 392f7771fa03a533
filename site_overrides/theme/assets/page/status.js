/* A status line: one sentence, a moment after the last thing that happened. */

const PAUSE = 700; // ms; a screen reader is not interrupted while the reader types

export function createStatus(line) {
  let later;
  const show = (text) => {
    if (line.textContent !== text) line.textContent = text;
  };
  return {
    say(text) {
      clearTimeout(later);
      later = setTimeout(show, PAUSE, text);
    },
    sayNow(text) {
      clearTimeout(later);
      show(text);
    },
  };
}
