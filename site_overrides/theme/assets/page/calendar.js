/* The times of a watch as a file for the phone's calendar; Python writes it. */

import { button, element } from "./page.js";
import { ask } from "./starter.js";

const FAILED = "The calendar file could not be made here. Set your phone’s own timer.";

export function mountCalendar(place, read) {
  const line = element("p", { role: "status", data: { calendar: "" } });
  let address = null;

  function offer(text) {
    if (address) URL.revokeObjectURL(address);
    address = URL.createObjectURL(new Blob([text], { type: "text/calendar" }));
    const link = element("a", { text: "Open the calendar file", href: address, download: "fire-watch.ics" });
    line.replaceChildren(link, ". Your calendar then reminds you. If the watch is lengthened, make it again.");
    link.click();
  }

  place.append(button("Calendar file", async () => {
    const kept = read();
    if (!kept) {
      line.textContent = "Start the watch first.";
      return;
    }
    line.textContent = "Making the calendar file.";
    const calendar = {
      start: kept.start / 1000,
      watch: (kept.end - kept.start) / 1000,
      monitoring: (kept.until - kept.end) / 1000,
      check_every: kept.every / 1000,
    };
    const reply = await ask({ calendar }).catch(() => ({}));
    if (reply.text) offer(reply.text);
    else line.textContent = FAILED;
  }));
  place.after(line);
}
