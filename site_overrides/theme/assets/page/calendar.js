/* The times of a watch as a file for the phone's calendar; Python writes it. */

import { offerFile } from "./file.js";
import { button, element } from "./page.js";
import { ask } from "./starter.js";

const FAILED = "The calendar file could not be made here. Set your phone’s own timer.";

export function mountCalendar(place, read) {
  const line = element("p", { role: "status", data: { calendar: "" } });
  const offer = (text) => offerFile(line, {
    text, type: "text/calendar", name: "fire-watch.ics", words: "Open the calendar file",
    after: ". Your calendar then reminds you. If the watch is lengthened, make it again.",
  });

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
