/* Loads the page again when a source has changed since it was made, or when make dev was started again. */

const PACE = 250; // ms
const { src, dataset } = document.currentScript;

/* Asked again and again: a line kept open in each window would use up those that a browser allows. */
async function look() {
  const number = await fetch(new URL("changes", src)).then((got) => got.text(), () => dataset.number);
  if (number === dataset.number) setTimeout(look, PACE);
  else location.reload();
}

if (!window.looksForChanges) {
  window.looksForChanges = true;
  look();
}
