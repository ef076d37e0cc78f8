// Joins the characters of each Chinese word by word joiners (U+2060) in the texts that are set large, so that no line of a sign or of a headline ends
// inside a word. What a word is, Intl.Segmenter (ICU) says. The joiners can not be seen; run this again whenever such a text has changed:
//
//   node locales/gen/join.mjs locales/bundles/zh-Hans.yaml > fresh.yaml && mv fresh.yaml locales/bundles/zh-Hans.yaml

import { readFileSync } from "node:fs";

const joiner = "\u2060";
const large = (section, key) => section === "legend" || section === "area" || section === "side" || section === "storey" || /^(page_)?head|^(keep_out|leave_plastic|stays_shut)$/.test(key) || key === "root";
const words = new Intl.Segmenter("zh", { granularity: "word" });

function joined(text) {
  const plain = text.replaceAll(joiner, "");
  const parts = plain.split(/(\{\{[^}]*\}\})/);
  const together = parts.map((part) => (part.startsWith("{{") ? part
    : [...words.segment(part)].map((s) => (s.isWordLike ? [...s.segment].join(joiner) : s.segment)).join("")));
  return together.join("").replace(/\}\}号/g, "}}" + joiner + "号");
}

let section = "";
const lines = readFileSync(process.argv[2], "utf8").split("\n").map((line) => {
  const head = line.match(/^(\w+):/);
  if (head) section = head[1];
  const message = line.match(/^( +)(\w+):( .*)$/);
  return message && large(section, message[2]) ? message[1] + message[2] + ":" + joined(message[3]) : line;
});
process.stdout.write(lines.join("\n"));
