/*
 * The one script of a copy out of the zip. Served, it starts what the site has. From a
 * folder no browser runs modules or Python: then it says so wherever a value is given,
 * by hand or by a link, so that no answer is taken for one of other values.
 */

(function begin() {
  const STAYS = "This copy works out nothing new: the answer below stays that of the example values.";
  const OURS = ["v", "for"];
  const notes = Array.from(document.querySelectorAll("[data-unzipped]"));

  if (location.protocol !== "file:") {
    for (const note of notes) note.remove();
    import("./page/main.js");
    return;
  }
  document.querySelector(".bb-footer").dataset.whole = "";

  const plain = (text) => text.slice(0, 40).replace(/\p{C}/gu, "\ufffd");

  function linked() {
    const all = [location.search, location.hash.replace(/^#\??/, "")].map((text) => new URLSearchParams(text));
    return all.find((values) => values.has("v"));
  }

  function add(note, text, address) {
    const line = document.createElement("p");
    line.textContent = text;
    if (address) {
      const link = document.createElement("a");
      link.href = link.textContent = address;
      line.append(" ", link);
    }
    note.append(line);
  }

  function showLinked(note, block, values) {
    const given = Array.from(values).filter(([name]) => !OURS.includes(name)).map(([name, text]) => {
      const field = Array.from(block.querySelectorAll("[data-field]")).find((each) => each.dataset.field === name);
      const label = field?.querySelector("label").firstChild.textContent.trim() ?? plain(name);
      return `${label}: “${plain(text)}”`;
    });
    add(note, `The link sets values that are not used here. ${given.join("; ")}.`);
    if (note.dataset.site) add(note, "With these values on the site:", `${note.dataset.site}?${values}`);
  }

  const values = linked();
  const wanted = values && (values.get("for") ?? notes[0]?.nextElementSibling.dataset.calculator);
  for (const note of notes) {
    const block = note.nextElementSibling;
    const form = block.querySelector("form");
    const line = form.querySelector("[data-engine]");
    const say = () => {
      line.textContent = STAYS;
      block.querySelector("[data-answer]").dataset.stale = "";
    };
    form.addEventListener("input", say);
    form.addEventListener("submit", (event) => {
      event.preventDefault(); // it would lead to this page with all values lost
      say();
    });
    if (block.dataset.calculator === wanted) showLinked(note, block, values);
  }
})();
