// A journal as weeks of work would have left it: a check with right answers, and demonstrations that an assessor watched. It is
// written into the browser's database, in the form that tests/data/journal-format-2.json and tests/journal_formats.rs hold.
import { readFileSync, readdirSync } from "node:fs";
import { join } from "node:path";
import { root } from "../../tools/shell.mjs";

const FORMAT = 3;
const SHEET = { slug: "nitrocellulose", hash: "00" };
const DAY_MS = 24 * 3600 * 1000;
/** Events that are written at once: a script must come to its end before the driver gives it up. */
const PART = 10_000;

const read = (...path) => readFileSync(join(root, "content", ...path), "utf8");

/** Card families that are evidence for a competency. */
function families(slug) {
  const all = readdirSync(join(root, "content", "families")).flatMap((name) => read("families", name).split("[[family]]"));
  const those = all.filter((text) => text.match(/^competencies = .*$/m)?.[0].includes(`"${slug}"`));
  return those.map((text) => ({ id: text.match(/^id = "(.+)"$/m)[1], version: Number(text.match(/^version = (\d+)$/m)[1]) }));
}

/** Criteria of a competency, by id. */
const criteria = (slug) => [...read("competencies.toml").matchAll(new RegExp(`id = "(${slug}-\\d+)"`, "g"))].map(([, id]) => id);

/** A journal of one apprentice on the tablet of that device. */
export class Seed {
  /** `after` is the number of the last event that is there already. */
  constructor(device, number, by, now = Date.now(), after = 0) {
    Object.assign(this, { device, number, by, now, after, events: [] });
  }

  stamp(event, daysAgo) {
    const at = new Date(this.now - daysAgo * DAY_MS + this.events.length * 1000).toISOString();
    const sequence = this.after + this.events.length + 1;
    return { event, format: FORMAT, sequence, device: this.device, at, date: at.slice(0, 10), person: this.number };
  }

  /** A check for a competency with so many right answers on each of these days. */
  check(slug, daysAgo, answersADay) {
    const attempt = `${this.device}-${slug}`;
    const within = { check: { attempt, set: "a-set" } };
    const [first] = daysAgo;
    this.events.push({ ...this.stamp("attempt", first), attempt, step: { opened: { set: "a-set", competencies: [slug] } } });
    const all = families(slug);
    let nth = 0;
    for (const day of daysAgo) {
      for (let count = 0; count < answersADay; count += 1, nth += 1) {
        const { id: family, version } = all[nth % all.length];
        this.events.push({
          ...this.stamp("answered", day), family, version, seed: 100_000 + nth, sheet: SHEET, answer: { term: "koa" },
          certainty: "test-board", mark: "right", guess: 0.25, active_seconds: 20, help: "none", within,
        });
      }
    }
    return this;
  }

  /** An answer in practice to a card of a family, today. */
  answer(family, right, version = 1) {
    this.events.push({
      ...this.stamp("answered", 0), family, version, seed: 1, sheet: SHEET, answer: { term: "koa" },
      certainty: "test-board", mark: right ? "right" : "wrong", guess: 0.25, active_seconds: 20, help: "none", within: "practice",
    });
    return this;
  }

  /** A demonstration on each of these days, alone, everything met. */
  watched(slug, daysAgo) {
    const judged = Object.fromEntries(criteria(slug).map((id) => [id, "met"]));
    daysAgo.forEach((day, nth) => {
      const stamp = this.stamp("observed", day);
      this.events.push({
        ...stamp, subject: this.number, competency: slug, occasion: `${slug}-${nth}`, on: stamp.date,
        work: `Ticket ${204 + nth}, back and sides`, alone: true, judged, by: this.by,
      });
    });
    return this;
  }

  /** Writes it into the database of the page and loads the page anew. */
  async put(page) {
    for (let from = 0; from < this.events.length; from += PART) await this.add(page, this.events.slice(from, from + PART));
    await page.reload();
  }

  async add(page, events) {
    const put = await page.driver.executeAsyncScript(
      `const [events, done] = arguments; const asked = indexedDB.open("stepboard");
       asked.onerror = () => done(false);
       asked.onsuccess = () => {
         const work = asked.result.transaction("journal", "readwrite");
         for (const event of events) work.objectStore("journal").add(JSON.stringify(event), event.sequence);
         work.oncomplete = () => { asked.result.close(); done(true); };
         work.onabort = () => done(false);
       };`,
      events,
    );
    if (!put) throw new Error("the journal was not written");
  }
}
