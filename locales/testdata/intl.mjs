// Answers questions with Intl: reads [{tag, what, args}] from standard input, writes {icu, cldr, full, answers} to standard output.
// Dates are [year, month, day], times [hour, minute]; all in UTC, so that no time zone moves them.
import { readFileSync } from "node:fs";

const day = ([y, m, d]) => new Date(Date.UTC(y, m - 1, d));
const time = ([h, m]) => new Date(Date.UTC(2027, 4, 8, h, m));
const dates = (tag, options) => new Intl.DateTimeFormat(tag, { timeZone: "UTC", ...options });
// h12 and not hour12: true, which ECMA-402 takes to mean 0:00 instead of 12:00 in languages that count 0 to 23 by habit.
const clock = { hour: "numeric", minute: "2-digit", hourCycle: "h12" };

const ask = {
  Day: (tag, args) => dates(tag, { dateStyle: "full" }).format(day(args)),
  ShortDay: (tag, args) => dates(tag, { weekday: "long", month: "long", day: "numeric" }).format(day(args)),
  Days: (tag, [m1, d1, m2, d2]) => dates(tag, { weekday: "long", month: "long", day: "numeric" }).formatRange(day([2027, m1, d1]), day([2027, m2, d2])),
  Time: (tag, args) => dates(tag, clock).format(time(args)),
  List: (tag, args) => new Intl.ListFormat(tag).format(args),
  Number: (tag, [n]) => new Intl.NumberFormat(tag).format(n),
  NameOf: (tag, [of]) => new Intl.DisplayNames([tag], { type: "language" }).of(of),
};

const questions = JSON.parse(readFileSync(0, "utf8"));
const tags = [...new Set(questions.map((q) => q.tag))];
console.log(JSON.stringify({
  icu: process.versions.icu,
  cldr: process.versions.cldr,
  full: Intl.DateTimeFormat.supportedLocalesOf(tags).length === tags.length,
  answers: questions.map(({ tag, what, args }) => ask[what](tag, args)),
}));
