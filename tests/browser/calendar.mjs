// usage: calendar.mjs FILE
// Reads a calendar file with a parser that isn't ours and prints its events as JSON; a file it can't read fails.
import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";

const root = path.resolve(path.dirname(fileURLToPath(import.meta.url)), "../..");
const ICAL = (await import(createRequire(path.join(root, "build/browser/package.json")).resolve("ical.js"))).default;

const calendar = new ICAL.Component(ICAL.parse(readFileSync(process.argv[2], "utf8")));
console.log(JSON.stringify(calendar.getAllSubcomponents("vevent").map((one) => {
  const event = new ICAL.Event(one);
  return {
    uid: event.uid,
    day: event.startDate.toString(),
    whole_day: event.startDate.isDate,
    summary: event.summary,
    description: event.description,
    stamp: one.getFirstPropertyValue("dtstamp").toString(),
    alarms: one.getAllSubcomponents("valarm").map((a) => a.getFirstPropertyValue("trigger").toString()),
  };
})));
