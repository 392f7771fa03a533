/* The sheets of an evening: chosen here, made in Python, printed in one go. */

import { fetchHandout, ownAddress } from "./handout.js";
import { showAddress, writeLink } from "./link.js";
import { keptFile } from "./outfit.js";
import { SITE, button, element } from "./page.js";
import { reflectRules } from "./rules.js";
import { ask } from "./starter.js";

const PLAN_HOOK = /^exercise_\d+$/;

export function mountPack(block) {
  const form = block.querySelector("[data-pack-form]");
  const find = (hook) => form.querySelector(`[data-${hook}]`);
  const said = find("pack-said");
  const sheets = block.querySelector("[data-pack-sheets]");
  const listed = find("handouts");
  const rules = form.querySelector("[data-rules-choice]");
  const boxes = Array.from(form.querySelectorAll("[data-exercise]"));
  const pages = find("page-choice");
  const handouts = []; // addresses, in their order
  let plan = null; // texts of a class plan, where its link was given

  form.hidden = false;
  find("own-outfit").hidden = !keptFile();
  block.querySelector("[data-by-hand]")?.remove();
  rules.value = document.documentElement.dataset.rules || rules.value;
  pages.append(...Array.from(document.querySelectorAll(".bb-all-pages a"), (link) => {
    const option = element("option", { text: link.textContent });
    option.value = new URL(link.getAttribute("href"), location.href).href;
    return option;
  }));

  /* Values of a plan: exercises, learners and benches are shown, the rest is passed on. */
  function takePlan(values) {
    plan = Object.fromEntries(values);
    const wanted = new Set(Array.from(values).filter(([name]) => PLAN_HOOK.test(name)).map(([, text]) => text));
    for (const box of boxes) box.checked = wanted.has(box.value);
    for (const name of ["learners", "benches"]) if (values.has(name)) find(name).value = values.get(name);
    if (values.has("rules") && Array.from(rules.options).some(({ value }) => value === values.get("rules"))) {
      rules.value = values.get("rules");
      reflectRules(rules.value); // a link does not change what the reader chose for other pages
    }
  }

  /* Values of an address, of whichever calculator. */
  function valuesOf(address) {
    const values = new Map(address.searchParams);
    if (!values.has("v")) return null;
    values.delete("v");
    values.delete("for");
    return values;
  }

  function texts() {
    const exercises = boxes.filter((box) => box.checked).map((box) => box.value);
    const picked = new Set(exercises);
    const planned = plan && Object.entries(plan).filter(([name]) => PLAN_HOOK.test(name)).map(([, text]) => text).filter((text) => text !== "none");
    /* As long as the ticks are those of the plan, its order and numbers stay. */
    const isPlans = planned?.length && new Set(planned).size === picked.size && planned.every((text) => picked.has(text));
    const own = isPlans ? { ...plan } : Object.fromEntries(exercises.map((text, place) => [`exercise_${place + 1}`, text]));
    for (const name of ["learners", "benches"]) if (find(name).value.trim()) own[name] = find(name).value.trim();
    return { isPlans: Boolean(isPlans), texts: { ...own, rules: rules.value } };
  }

  function add(text) {
    const address = ownAddress(text);
    if (!address) {
      said.textContent = `A link with values: it leads out of this site. Give one that begins with ${SITE}.`;
      return false;
    }
    handouts.push(address);
    list();
    said.textContent = `${handouts.length === 1 ? "One page is" : `${handouts.length} pages are`} on the list.`;
    return true;
  }

  function list() {
    listed.replaceChildren(...handouts.map((address, place) => {
      const line = element("li", { text: decodeURIComponent(address.pathname.slice(new URL(SITE).pathname.length)) || "first page" });
      if (address.search) line.append(element("span", { text: " with its values" }));
      const drop = button("Take off", () => {
        handouts.splice(place, 1);
        list();
      });
      drop.setAttribute("aria-label", `Take off page ${place + 1}`);
      line.append(" ", drop);
      return line;
    }));
  }

  async function make() {
    said.textContent = "Making the sheets.";
    const articles = [];
    for (const address of handouts) {
      try {
        articles.push({ address, ...(await fetchHandout(address)) });
      } catch (error) {
        said.textContent = `The page ${address.pathname} could not be put in: ${error.message}.`;
        return;
      }
    }
    const chosen = texts();
    const address = writeLink(location, chosen.texts, "pack", true);
    const pack = {
      outfit: find("own").checked && keptFile() || "",
      texts: chosen.texts, planned: chosen.isPlans, site: SITE, address,
      parts: Array.from(form.querySelectorAll("[data-part]:checked"), (box) => box.value),
      handouts: articles.map(({ title, address: from }) => ({ title, address: from.href })),
    };
    const reply = await ask({ pack }).catch(() => ({}));
    if (reply.html === undefined) {
      said.textContent = reply.errors?.[0].message ?? "The sheets could not be made here.";
      return;
    }
    sheets.innerHTML = reply.html;
    sheets.append(...articles.map(({ article }) => article));
    block.dataset.changed = "";
    showAddress(address);
    said.textContent = `${reply.titles.length + 1} sheets are ready below, the cover first.`;
    printAll.hidden = false;
  }

  const printAll = button("Print all of it", () => print());
  printAll.hidden = true;
  find("pack-tools").append(printAll);
  find("add-page").append(button("Add this page", () => add(pages.value)));
  find("add-link").append(button("Add this link", () => { if (add(find("page-link").value)) find("page-link").value = ""; }));
  find("plan-link").addEventListener("change", ({ target }) => {
    const address = ownAddress(target.value);
    const values = address && valuesOf(address);
    if (values) takePlan(values);
    else plan = null;
    said.textContent = values ? "The values of the plan are taken over." : target.value.trim() ? "Link of your class plan: no values of this site stand in it. Paste what Copy link gave." : "";
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    make();
  });
  const values = valuesOf(new URL(location.href));
  if (values) takePlan(values);
}
