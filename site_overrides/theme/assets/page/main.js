/* Mounts what a page holds, once per element; the theme says when a page is there. */

import { mountCarry } from "./carry.js";
import { mountCalculator, applyLink } from "./form.js";
import { mountLearners } from "./learners.js";
import { mountLog } from "./log.js";
import { mountOffline } from "./offline.js";
import { mountPack } from "./pack.js";
import { mountPractice } from "./practice.js";
import { mountProcedure } from "./procedure.js";
import { mountRules, reflectRules } from "./rules.js";
import { mountSheet } from "./sheet.js";
import { idle, startNone, startWhenIdle } from "./starter.js";
import { isOfOtherRelease } from "./store.js";
import { mountTimer } from "./timer.js";
import { mountUpdate, watchReleases } from "./update.js";

/* All pages in one list: laid out when nothing waits, as a screen reader lists only what is laid out. */
async function mountFooter(footer) {
  await idle();
  footer.dataset.whole = "";
}

const HOOKS = {
  "[data-calculator]": mountCalculator,
  "[data-procedure]": mountProcedure,
  "[data-timer]": mountTimer,
  "[data-practice]": mountPractice,
  "[data-learners-link]": mountLearners,
  "[data-sheet]": mountSheet,
  "[data-carry]": mountCarry,
  "[data-log]": mountLog,
  "[data-pack]": mountPack,
  "[data-offline]": mountOffline,
  "[data-rules-place]": mountRules,
  "[data-status]": mountUpdate,
  ".bb-footer": mountFooter,
};

function mountPage() {
  if (isOfOtherRelease()) { // it gets its own scripts and its own engine
    location.reload();
    return;
  }
  reflectRules();
  for (const [hook, mount] of Object.entries(HOOKS)) {
    for (const element of document.querySelectorAll(`${hook}:not([data-mounted])`)) {
      element.dataset.mounted = "";
      mount(element);
    }
  }
  if (document.querySelector("[data-calculator], [data-practice]")) startWhenIdle();
  else startNone();
}

/* The theme follows a link to the page that is already open without a new page. */
let shown = location.pathname;
function followLink(address) {
  if (address.pathname === shown && address.search) applyLink();
  shown = address.pathname;
}

if (window.document$) {
  window.document$.subscribe(mountPage);
  window.location$?.subscribe(followLink);
} else {
  mountPage();
}
watchReleases();
