// What happens at the edges: text read, printed and converted, beside general-purpose libraries of units.
import { cubicMetrePerSecond, foot, format, metre } from "@leat/quantity";
import { read } from "@leat/quantity/text";
import Qty from "js-quantities";
import { unit as mathUnit } from "mathjs";
import { feet, Measure, meters } from "safe-units";
import unitmath from "unitmath";

import { same } from "./invented.mjs";

const ops = 100;

/** Some libraries round their factors: a gallon to nine digits. */
const rounded = 1e-6;

/** Does it `ops` times. */
function often(once) {
  return () => {
    let total = 0;
    for (let i = 0; i < ops; i++) total += once(i);
    return total;
  };
}

/** A variant, or why there is none: it throws, or its answer is another. */
function tried(name, once, expected) {
  try {
    const got = once(0);
    if (!(Math.abs(got - expected) <= rounded * Math.abs(expected)))
      return { name, refused: `gives ${got}` };
    return { name, run: often(once) };
  } catch (error) {
    return {
      name,
      refused: `refused: ${String(error.message ?? error)
        .split("\n")[0]
        .slice(0, 40)}`,
    };
  }
}

function reading(text, kind, si, leatUnit, unit) {
  return {
    name: `read \`${text}\``,
    ops,
    per: "text",
    variants: [
      { name: "Leat", run: often(() => read(text, kind).in(leatUnit)) },
      tried("mathjs", () => mathUnit(text).toNumber(unit), si),
      tried("js-quantities", () => new Qty(text).to(unit).scalar, si),
      tried("unitmath", () => unitmath(text).to(unit).value, si),
      { name: "safe-units", refused: "reads no text" },
    ],
  };
}

const lengths = Array.from({ length: ops }, (_, i) => 20.11 + i / 7);

function printing() {
  const leat = lengths.map((n) => foot.of(n));
  const math = lengths.map((n) => mathUnit(n, "ft"));
  const qty = lengths.map((n) => Qty(n, "ft"));
  const um = lengths.map((n) => unitmath(n, "ft"));
  const safe = lengths.map((n) => Measure.of(n, feet));
  return {
    // The first character of each text: trailing zeros are a matter of taste.
    name: "print feet as metres, three digits",
    ops,
    per: "text",
    variants: [
      { name: "Leat", run: often((i) => format(leat[i], metre, 3).charCodeAt(0)) },
      { name: "mathjs", run: often((i) => math[i].to("m").format({ precision: 3 }).charCodeAt(0)) },
      {
        name: "js-quantities",
        run: often((i) =>
          qty[i].format("m", (scalar, units) => `${scalar.toPrecision(3)} ${units}`).charCodeAt(0),
        ),
      },
      {
        name: "unitmath",
        run: often((i) => um[i].to("m").toString({ precision: 3 }).charCodeAt(0)),
      },
      {
        name: "safe-units",
        run: often((i) => `${safe[i].valueIn(meters).toPrecision(3)} m`.charCodeAt(0)),
      },
    ],
  };
}

function converting() {
  const leat = lengths.map((n) => foot.of(n));
  const math = lengths.map((n) => mathUnit(n, "ft"));
  const qty = lengths.map((n) => Qty(n, "ft"));
  const um = lengths.map((n) => unitmath(n, "ft"));
  const safe = lengths.map((n) => Measure.of(n, feet));
  return {
    name: "convert feet to metres",
    ops,
    per: "number",
    variants: [
      { name: "Leat", run: often((i) => leat[i].in(metre)) },
      { name: "mathjs", run: often((i) => math[i].toNumber("m")) },
      { name: "js-quantities", run: often((i) => qty[i].to("m").scalar) },
      { name: "unitmath", run: often((i) => um[i].to("m").value) },
      { name: "safe-units", run: often((i) => safe[i].valueIn(meters)) },
    ],
  };
}

/** @returns {import("./measure.mjs").Group[]} */
export function text() {
  const groups = [
    reading("110 ft", "length", 33.528, metre, "m"),
    reading("3 1/2 in", "length", 0.0889, metre, "m"),
    reading(`5'-7 1/4"`, "length", 1.70815, metre, "m"),
    reading("315 gal/min", "volume flow", 315 * 6.30901964e-5, cubicMetrePerSecond, "m^3/s"),
    converting(),
    printing(),
  ];
  same(groups, rounded);
  return groups;
}
