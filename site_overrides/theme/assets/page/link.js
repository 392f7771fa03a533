/* A link with values: `?v=1&gauge=1500+psi`, as typed, in the order of the form. */

import { quoted } from "./page.js";

const VERSION = "1";
const OURS = new Set(["v", "for"]);

function read(text) {
  const values = new Map();
  for (const [name, value] of new URLSearchParams(text)) {
    if (!values.has(name)) values.set(name, value);
  }
  return values.has("v") ? values : null;
}

/* Values of an address for one calculator, or null. The query first; mail scanners
   and sign-in pages drop what stands behind #, but old notes may have it there. */
export function readLink(address, calculator, isFirst) {
  const values = read(address.search) ?? read(address.hash.replace(/^#\??/, ""));
  if (!values) return null;
  const meant = values.get("for");
  if (meant ? meant !== calculator : !isFirst) return null;
  const problems = [];
  if (values.get("v") !== VERSION) {
    problems.push(`This link has the form ${quoted(values.get("v"), 20)}, which this page does not know: check each value.`);
  }
  for (const name of OURS) values.delete(name);
  return { values, problems };
}

export function writeLink(address, texts, calculator, isAlone) {
  const query = new URLSearchParams({ v: VERSION });
  if (!isAlone) query.set("for", calculator);
  for (const [name, text] of Object.entries(texts)) query.set(name, text);
  return `${address.origin}${address.pathname}?${query}`;
}

/* Change the address of this page without a new page; the theme keeps its scroll
   position in the state. */
export function showAddress(address) {
  history.replaceState(history.state, "", address);
}
