// Writes ../cldr.json: how each of our languages writes dates, hours, lists and numbers.
//
// Run by hand, in an empty folder, whenever a language or a CLDR version is added:
//
//   npm install cldr-core@48.2.0 cldr-dates-full@48.2.0 cldr-misc-full@48.2.0 cldr-localenames-full@48.2.0 cldr-numbers-full@48.2.0
//   node .../locales/gen/cldr.mjs node_modules > .../locales/cldr.json
//
// The excerpts in testdata/cldr have the same layout, so that folder serves as well as node_modules.
// What the Go side can not write yet (other digits, grouping by two, day periods such as "in the morning") stops the script.

import { readFileSync } from "node:fs";
import { join } from "node:path";

// Our tag, and the CLDR locale whose customs readers in the United States expect.
// es alone has a 24-hour clock. ar is the Arabic of no one country, with the digits 0 to 9 and the month names of radio and newspapers from Egypt
// to the Gulf (يناير, مايو); of the countries from which many readers come, ar-EG, ar-IQ, ar-SD, ar-SY and ar-YE have the digits ٠ to ٩, which the
// phone numbers and house numbers here do not have, and ar-IQ and ar-SY other months (أيار).
const languages = [
  ["ar", "ar"],
  ["en", "en"],
  ["es", "es-US"],
  ["ru", "ru"],
  ["vi", "vi"],
  ["zh-Hans", "zh-Hans"],
];

const version = "48.2.0"; // of the cldr-* packages; their files name the major version alone

const folder = process.argv[2];
if (!folder) throw new Error("usage: node cldr.mjs node_modules > cldr.json");

const read = (...path) => JSON.parse(readFileSync(join(folder, ...path), "utf8"));
const main = (pack, from, file) => read(pack, "main", from, file).main[from];
const refuse = (from, what) => { throw new Error(`${from}: ${what}; teach the Go side first`); };

const weekdays = ["sun", "mon", "tue", "wed", "thu", "fri", "sat"];
const understood = new Set(["EEEE", "MMMM", "M", "d", "y", "h", "mm", "a"]);

function checked(from, pattern) {
  for (const field of pattern.replace(/'[^']+'/g, "").match(/([A-Za-z])\1*|'/g) ?? []) {
    if (!understood.has(field)) refuse(from, `field ${field} in the pattern "${pattern}"`);
  }
  return pattern;
}

// UTS 35, "Matching Skeletons": where CLDR lists no pattern of the wanted widths, take the nearest and widen its fields, but leave a month in digits.
function dayWithoutYear(formats) {
  const nearest = formats.MMMMEEEEd ?? formats.MMMMEd ?? formats.MMMEd;
  return nearest.replace(/E+|c+/, "EEEE").replace(/MMM+/, "MMMM");
}

// An interval pattern is two patterns in one: the second begins where a field comes back.
function cut(from, pattern) {
  const seen = new Set();
  for (const { 0: field, index } of pattern.matchAll(/([A-Za-z])\1*/g)) {
    if (seen.has(field)) return [pattern.slice(0, index), pattern.slice(index)];
    seen.add(field);
  }
  refuse(from, `interval "${pattern}" without a second half`);
}

// What stands between two days in different months: " – ", "至".
function through(from, formats) {
  const [first] = cut(from, (formats.MMMMEd ?? formats.MMMEd).M.replace(/'[^']+'/g, ""));
  return first.match(/[^A-Za-z]+$/)[0];
}

function dates(from) {
  const { months, days, dayPeriods, dateFormats, dateTimeFormats } =
    main("cldr-dates-full", from, "ca-gregorian.json").dates.calendars.gregorian;
  const { availableFormats, intervalFormats } = dateTimeFormats;
  // A c in a pattern asks for the weekday as it stands alone, an E for the weekday in a date. We keep one name of each.
  if (weekdays.some((day) => days.format.wide[day] !== days["stand-alone"].wide[day])) refuse(from, "two names of a weekday");
  return {
    months: Object.values(months.format.wide),
    weekdays: weekdays.map((day) => days.format.wide[day]),
    am_pm: ["am", "pm"].map((half) => dayPeriods.format.abbreviated[half]),
    full_date: checked(from, dateFormats.full),
    day_without_year: checked(from, dayWithoutYear(availableFormats)),
    time: checked(from, availableFormats.hm),
    through: through(from, intervalFormats),
  };
}

function numbers(from) {
  const n = main("cldr-numbers-full", from, "numbers.json").numbers;
  if (n.defaultNumberingSystem !== "latn") refuse(from, `digits ${n.defaultNumberingSystem}`);
  const pattern = n["decimalFormats-numberSystem-latn"].standard;
  if (pattern !== "#,##0.###") refuse(from, `number pattern ${pattern}`);
  if (n.minimumGroupingDigits !== "1") refuse(from, `minimumGroupingDigits ${n.minimumGroupingDigits}`);
  const { decimal, group, minusSign: minus } = n["symbols-numberSystem-latn"];
  return { decimal, group, minus };
}

function list(from) {
  const { 2: two, start, middle, end } = main("cldr-misc-full", from, "listPatterns.json").listPatterns["listPattern-type-standard"];
  return { two, start, middle, end };
}

// CLDR has the signs of a language with the spaces around them where it writes the names of locales: "Chinese, Simplified" and "Calendar: Islamic".
function signs(from) {
  const { localeSeparator, localeKeyTypePattern } =
    main("cldr-localenames-full", from, "localeDisplayNames.json").localeDisplayNames.localeDisplayPattern;
  const between = (pattern) => pattern.match(/^\{0\}(.+)\{1\}$/)?.[1] ?? refuse(from, `pattern ${pattern}`);
  return { comma: between(localeSeparator), colon: between(localeKeyTypePattern) };
}

function direction(from) {
  const { characterOrder } = main("cldr-misc-full", from, "layout.json").layout.orientation;
  return characterOrder === "right-to-left" ? "rtl" : "ltr";
}

// base is the language without its script: that of zh-Hans is zh.
const base = (tag) => tag.split("-")[0];

// We write one Chinese only, and a name such as "китайский, упрощенное письмо" would come apart in a list. So it is called by its base.
function names(from) {
  const all = main("cldr-localenames-full", from, "languages.json").localeDisplayNames.languages;
  if (new Set(languages.map(([tag]) => base(tag))).size < languages.length) refuse(from, "one name for two of our languages");
  return Object.fromEntries(languages.map(([tag]) => [tag, all[base(tag)] ?? refuse(from, `no name for ${tag}`)]));
}

// script is the ISO 15924 code: a tag names it, or CLDR says which one is likely.
function script(tag) {
  const named = tag.split("-")[1];
  return named ?? read("cldr-core", "supplemental", "likelySubtags.json").supplemental.likelySubtags[tag].split("-")[1];
}

function plurals(tag) {
  const rules = read("cldr-core", "supplemental", "plurals.json").supplemental["plurals-type-cardinal"][base(tag)];
  return Object.keys(rules).map((key) => key.replace("pluralRule-count-", ""));
}

function entry([tag, from]) {
  return [tag, {
    from,
    script: script(tag),
    direction: direction(from),
    names: names(from),
    ...dates(from),
    list: list(from),
    ...signs(from),
    ...numbers(from),
    plurals: plurals(tag),
  }];
}

const table = {
  about: {
    cldr: read("cldr-core", "supplemental", "plurals.json").supplemental.version._cldrVersion,
    packages: version,
    licence: "Unicode-3.0, Copyright © 2004-2026 Unicode, Inc.; text at https://www.unicode.org/license.txt",
    made_by: "locales/gen/cldr.mjs",
  },
  languages: Object.fromEntries(languages.map(entry)),
};
// Spaces that look like others, and marks of direction, which look like nothing, are written as escapes, so that a reader sees which one CLDR says.
const visible = (text) => text.replace(/[\u00a0\u061c\u2009\u200e\u200f\u202f]/g, (c) => "\\u" + c.charCodeAt(0).toString(16).padStart(4, "0"));
process.stdout.write(visible(JSON.stringify(table, null, 2)) + "\n");
