/* Lessons kept on this device: what was typed is kept here, every figure comes from Python. */

import { offerFile } from "./file.js";
import { examplesOf, requestOf } from "./form.js";
import { button, element, remember, remembered } from "./page.js";
import { ask, onEngine } from "./starter.js";

const FAILED = "That could not be worked out here. What is kept stays as it is.";

export function mountLog(block) {
  const id = block.dataset.log;
  const key = `log-${id}`;
  const list = element("div", { data: { logList: "" } });
  const line = element("p", { role: "status", class: "bb-log-said", data: { logSaid: "" } });
  const tools = element("div", { class: "bb-tools", data: { logTools: "" } });
  let turn = 0;

  function read() {
    try {
      const kept = JSON.parse(remembered("localStorage", key));
      return Array.isArray(kept) ? kept.filter((texts) => texts && typeof texts === "object") : [];
    } catch {
      return [];
    }
  }

  /* False where the browser keeps nothing. */
  function write(lines) {
    remember("localStorage", key, lines.length ? JSON.stringify(lines) : null);
    return read().length === lines.length;
  }

  const rules = () => requestOf(id)?.texts.rules;
  const asked = (more) => ask({ log: { lines: read(), rules: rules(), ...more } }).catch(() => ({}));

  async function draw() {
    const mine = (turn += 1);
    const reply = await asked({});
    if (mine !== turn || !block.isConnected) return;
    if (reply.html === undefined) {
      line.textContent = reply.errors?.[0].message ?? FAILED;
      return;
    }
    list.innerHTML = reply.html;
    for (const spot of list.querySelectorAll("[data-line]")) {
      spot.replaceWith(button(spot.textContent, () => remove(Number(spot.dataset.line))));
    }
    for (const made of [csv, all]) made.hidden = !read().length;
  }

  function remove(number) {
    if (!confirm(`Delete lesson ${number + 1} from this device?`)) return;
    write(read().filter((_texts, place) => place !== number));
    line.textContent = "The lesson is deleted.";
    draw();
  }

  async function keep() {
    const examples = examplesOf(id);
    if (examples.length) {
      line.textContent = `Not kept, as these are example values: ${examples.join(", ")}. Write your own, or clear what you do not know.`;
      return;
    }
    const request = requestOf(id);
    const reply = await ask({ ...request, drawings: false }).catch(() => ({}));
    if (!reply.answer) {
      line.textContent = reply.errors?.[0].message ?? FAILED;
      return;
    }
    const isKept = write([...read(), request.texts]);
    line.textContent = isKept ? "The lesson is kept on this device." : "This browser keeps nothing: copy the answer instead.";
    draw();
  }

  const csv = button("Kept lessons as CSV", async () => {
    const reply = await asked({ file: true });
    if (reply.text === undefined) line.textContent = reply.errors?.[0].message ?? FAILED;
    else offerFile(line, { ...reply, words: `Open ${reply.name}`, after: ". It stays on this device until you pass it on." });
  });
  const all = button("Delete all lessons", () => {
    if (!confirm("Delete all kept lessons from this device?")) return;
    write([]);
    line.textContent = "All kept lessons are deleted.";
    draw();
  });

  const count = read().length;
  list.append(element("p", { text: count ? `Lessons kept on this device: ${count}. The list follows when the calculator is ready.` : "No lesson is kept on this device." }));
  for (const made of [csv, all]) made.hidden = !count;
  tools.append(button("Keep this lesson", keep), csv, all);
  block.querySelector("[data-by-hand]")?.remove();
  block.append(tools, line, list);

  document.addEventListener("change", function hear({ target }) {
    if (!block.isConnected) document.removeEventListener("change", hear);
    else if (target.matches?.("[data-rules-choice]")) draw();
  });
  onEngine(({ state }) => {
    if (!block.isConnected) return false;
    if (state === "ready") draw();
    return true;
  });
}
