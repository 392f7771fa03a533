/* Loads the page again when a source has changed since it was made, or when make dev was started again. */

const { src, dataset } = document.currentScript;
if (!window.hearsOfChanges) {
  window.hearsOfChanges = new EventSource(new URL("changes", src));
  window.hearsOfChanges.onmessage = ({ data }) => {
    if (data !== dataset.number) location.reload();
  };
}
