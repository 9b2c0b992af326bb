// Arithmetic with units, beside general-purpose libraries of units on the same numbers.
import { firstPrinciples, formula, input, output } from "@leat/formula";
import { metre, metrePerSecond, metrePerSecondSquared, one, second } from "@leat/quantity";
import Qty from "js-quantities";
import { unit as mathUnit, add, divide, multiply } from "mathjs";
import { Measure, meters, seconds } from "safe-units";
import unitmath from "unitmath";

import { same, spread } from "./invented.mjs";

const count = 1000;
const lengths = spread(count, 1, 20, 1);
const times = spread(count, 1, 20, 2);

/** The same lengths and times in each library. */
const libraries = {
  Leat: {
    length: Array.from(lengths, (n) => metre.of(n)),
    time: Array.from(times, (n) => second.of(n)),
    sum: (a, b) => a.plus(b),
    product: (a, b) => a.times(b),
    quotient: (a, b) => a.dividedBy(b),
    number: (q) => q["~si"],
  },
  mathjs: {
    length: Array.from(lengths, (n) => mathUnit(n, "m")),
    time: Array.from(times, (n) => mathUnit(n, "s")),
    sum: (a, b) => add(a, b),
    product: (a, b) => multiply(a, b),
    quotient: (a, b) => divide(a, b),
    number: (q) => q.value,
  },
  "js-quantities": {
    length: Array.from(lengths, (n) => Qty(n, "m")),
    time: Array.from(times, (n) => Qty(n, "s")),
    sum: (a, b) => a.add(b),
    product: (a, b) => a.mul(b),
    quotient: (a, b) => a.div(b),
    number: (q) => q.scalar,
  },
  unitmath: {
    length: Array.from(lengths, (n) => unitmath(n, "m")),
    time: Array.from(times, (n) => unitmath(n, "s")),
    sum: (a, b) => a.add(b),
    product: (a, b) => a.mul(b),
    quotient: (a, b) => a.div(b),
    number: (q) => q.value,
  },
  "safe-units": {
    length: Array.from(lengths, (n) => Measure.of(n, meters)),
    time: Array.from(times, (n) => Measure.of(n, seconds)),
    sum: (a, b) => a.plus(b),
    product: (a, b) => a.times(b),
    quotient: (a, b) => a.over(b),
    number: (q) => q.value,
  },
};

/** A loop of its own for each library and operation: one shared by all would be slow for all. */
function loop(operation, partner, { length, time, number, ...does }) {
  const body = `return () => {
    let total = 0;
    for (let i = 0; i < ${count}; i++) total += number(does(left[i], right[(i + 1) % ${count}]));
    return total;
  };`;
  return new Function("left", "right", "does", "number", body)(
    length,
    partner === "length" ? length : time,
    does[operation],
    number,
  );
}

const plainLoops = {
  sum: () => {
    let total = 0;
    for (let i = 0; i < count; i++) total += lengths[i] + lengths[(i + 1) % count];
    return total;
  },
  product: () => {
    let total = 0;
    for (let i = 0; i < count; i++) total += lengths[i] * lengths[(i + 1) % count];
    return total;
  },
  quotient: () => {
    let total = 0;
    for (let i = 0; i < count; i++) total += lengths[i] / times[(i + 1) % count];
    return total;
  },
};

function operation(name, of, partner) {
  return {
    name: `${name} of two quantities`,
    ops: count,
    per: "operation",
    variants: [
      { name: "plain numbers", run: plainLoops[of] },
      ...Object.entries(libraries).map(([library, does]) => ({
        name: library === "Leat" ? "Leat, quantities" : library,
        run: loop(of, partner, does),
      })),
    ],
  };
}

// The head lost in a pipe of 1,000 segments, each with its friction factor, length, bore and velocity.
const factors = spread(count, 0.01, 0.03, 3);
const pipes = spread(count, 1, 10, 4);
const bores = spread(count, 0.05, 0.3, 5);
const velocities = spread(count, 0.5, 3, 6);
const gravity = 9.80665;

/** Darcy–Weisbach as a formula whose body is called in a loop. */
const segmentLoss = formula(() => ({
  id: "segment-loss",
  equation: "hf = f · L/D · v²/(2·g)",
  inputs: {
    frictionFactor: input("coefficient", "f"),
    length: input("length", "L"),
    insideDiameter: input("length", "D", { domain: "positive" }),
    velocity: input("velocity", "v"),
    gravity: input("acceleration", "g", { domain: "positive" }),
  },
  output: output("length", "hf"),
  source: firstPrinciples.at("Darcy–Weisbach"),
  body: ({ f, L, D, v, g }) => (((f * L) / D) * v * v) / (2 * g),
}));
const { body } = segmentLoss;

const segments = (f, length, velocity) =>
  Array.from(factors, (n, i) => ({
    f: f(n),
    L: length(pipes[i]),
    D: length(bores[i]),
    v: velocity(velocities[i]),
  }));

const leatSegments = segments(
  (n) => one.of(n),
  (n) => metre.of(n),
  (n) => metrePerSecond.of(n),
);
const twiceGravity = metrePerSecondSquared.of(2 * gravity);
const mathSegments = segments(
  (n) => n,
  (n) => mathUnit(n, "m"),
  (n) => mathUnit(n, "m/s"),
);
const mathTwiceGravity = mathUnit(2 * gravity, "m/s^2");
const qtySegments = segments(
  (n) => Qty(n),
  (n) => Qty(n, "m"),
  (n) => Qty(n, "m/s"),
);
const qtyTwiceGravity = Qty(2 * gravity, "m/s^2");
const unitmathSegments = segments(
  (n) => n,
  (n) => unitmath(n, "m"),
  (n) => unitmath(n, "m/s"),
);
const unitmathTwiceGravity = unitmath(2 * gravity, "m/s^2");
const metresPerSecond = meters.per(seconds);
const safeSegments = segments(
  (n) => n,
  (n) => Measure.of(n, meters),
  (n) => Measure.of(n, metresPerSecond),
);
const safeTwiceGravity = Measure.of(2 * gravity, metresPerSecond.per(seconds));

const headLoss = {
  name: "head lost in 1,000 segments, f·L/D·v²/(2g) each",
  ops: 1,
  per: "1,000 segments",
  variants: [
    {
      name: "plain numbers",
      run: () => {
        let total = 0;
        for (let i = 0; i < count; i++) {
          total +=
            (((factors[i] * pipes[i]) / bores[i]) * velocities[i] * velocities[i]) / (2 * gravity);
        }
        return total;
      },
    },
    {
      name: "Leat, formula body",
      gate: 1.15,
      run: () => {
        let total = 0;
        for (let i = 0; i < count; i++)
          total += body({ f: factors[i], L: pipes[i], D: bores[i], v: velocities[i], g: gravity });
        return total;
      },
    },
    {
      name: "Leat, quantities",
      run: () => {
        let total = metre.of(0);
        for (const { f, L, D, v } of leatSegments) {
          total = total.plus(f.times(L).dividedBy(D).times(v.squared()).dividedBy(twiceGravity));
        }
        return total["~si"];
      },
    },
    {
      name: "mathjs",
      run: () => {
        let total = mathUnit(0, "m");
        for (const { f, L, D, v } of mathSegments) {
          total = add(
            total,
            divide(multiply(divide(multiply(f, L), D), multiply(v, v)), mathTwiceGravity),
          );
        }
        return total.toNumber("m");
      },
    },
    {
      name: "js-quantities",
      run: () => {
        let total = Qty(0, "m");
        for (const { f, L, D, v } of qtySegments)
          total = total.add(f.mul(L).div(D).mul(v.mul(v)).div(qtyTwiceGravity));
        return total.to("m").scalar;
      },
    },
    {
      name: "unitmath",
      run: () => {
        let total = unitmath(0, "m");
        for (const { f, L, D, v } of unitmathSegments) {
          total = total.add(L.mul(f).div(D).mul(v.mul(v)).div(unitmathTwiceGravity));
        }
        return total.to("m").value;
      },
    },
    {
      name: "safe-units",
      run: () => {
        let total = Measure.of(0, meters);
        for (const { f, L, D, v } of safeSegments) {
          total = total.plus(L.scale(f).over(D).times(v.squared()).over(safeTwiceGravity));
        }
        return total.value;
      },
    },
  ],
};

/** @returns {import("./measure.mjs").Group[]} */
export function arithmetic() {
  return same([
    operation("sum", "sum", "length"),
    operation("product", "product", "length"),
    operation("quotient", "quotient", "time"),
    headLoss,
  ]);
}
