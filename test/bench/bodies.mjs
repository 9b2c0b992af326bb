// Bodies of formulas in a loop, against the same equation written into the loop by hand. Everything varies from row to row, so
// that neither side can move work out of the loop.
import { loopDrop } from "@leat/dc-transmission";
import {
  francisContractedDischarge,
  francisSuppressedDischarge,
  vNotchDischarge,
} from "@leat/flow-measurement";
import { jetFlow } from "@leat/nozzles";
import { frictionFactor, reachHeadLoss } from "@leat/penstock";

import { spread } from "./invented.mjs";

const rows = 2000;
const heads = spread(rows, 0.06, 0.3, 11);
const widths = spread(rows, 0.5, 2, 12);
const angles = spread(rows, 0.6, 1.7, 13);
const depths = spread(rows, 0.5, 1, 14);
const flows = spread(rows, 0.002, 0.05, 15);
const bores = spread(rows, 0.08, 0.25, 16);
const roughnesses = spread(rows, 1.5e-6, 1e-4, 17);
const reynolds = spread(rows, 5e3, 2e6, 18);
const relatives = spread(rows, 1e-6, 1e-3, 19);
const pipes = spread(rows, 5, 60, 20);
const currents = spread(rows, 1, 40, 21);
const perMetre = spread(rows, 2e-4, 6e-3, 22);
const counts = Float64Array.from(heads, (_, i) => 1 + (i % 2));
const fittings = Array.from(heads, (_, i) => [
  { K: 0.2 + (i % 7) / 10, n: 1 + (i % 3) },
  { K: 0.5, n: 1 },
]);
const gravity = 9.80665;

/** Where each loop writes: a sum would make every row wait for the one before. */
const out = new Float64Array(rows);

// Functions by hand, as one would write them for numbers in metres and seconds.

function notchByHand(h, theta, g) {
  const degrees = theta * (180 / Math.PI);
  const ce = 0.607165052 - 0.000874466963 * degrees + 6.10393334e-6 * degrees * degrees;
  const feet =
    0.0144902648 -
    0.00033955535 * degrees +
    3.29819003e-6 * degrees * degrees -
    1.06215442e-8 * degrees * degrees * degrees;
  const he = h + feet * 0.3048;
  return (8 / 15) * ce * Math.sqrt(2 * g) * Math.tan(theta / 2) * he * he * Math.sqrt(he);
}

const rootFoot = Math.sqrt(0.3048);

function factorByHand(re, r) {
  if (re <= 2000) return 64 / re;
  if (re < 4000) {
    const end = factorByHand(4000, r);
    return 0.032 + ((re - 2000) / 2000) * (end - 0.032);
  }
  const a = r / 3.7;
  const b = 2.51 / re;
  let x = -2 * Math.log10(a + 5.74 / re ** 0.9);
  for (let i = 0; i < 30; i++) {
    const inner = a + b * x;
    const step = (x + 2 * Math.log10(inner)) / (1 + (2 * b) / (Math.LN10 * inner));
    x -= step;
    if (Math.abs(step) <= 1e-8 * x) return 1 / (x * x);
  }
  throw new Error("no root");
}

/** A group of two: the loop by hand, and the body in the loop, which give the same in each row. */
function pair(name, byHand, leat) {
  byHand();
  const expected = out.slice();
  leat();
  const row = expected.findIndex((n, i) => !(Math.abs(out[i] - n) <= 1e-9 * Math.abs(n)));
  if (row >= 0)
    throw new Error(`${name}, row ${row}: the body gives ${out[row]}, not ${expected[row]}`);
  return {
    name,
    ops: rows,
    per: "row",
    variants: [
      { name: "by hand", run: byHand },
      { name: "Leat, formula body", run: leat, gate: 1.15 },
    ],
  };
}

function notch() {
  const { body, constants } = vNotchDischarge;
  const { ft, deg, rad } = constants;
  return pair(
    "V-notch weir",
    () => {
      for (let i = 0; i < rows; i++) out[i] = notchByHand(heads[i], angles[i], gravity);
      return out[rows - 1];
    },
    () => {
      for (let i = 0; i < rows; i++) {
        out[i] = body({
          h: heads[i],
          θ: angles[i],
          P: depths[i],
          B: widths[i],
          g: gravity,
          ft,
          deg,
          rad,
        });
      }
      return out[rows - 1];
    },
  );
}

function francisContracted() {
  const { body, constants } = francisContractedDischarge;
  const { C } = constants;
  return pair(
    "Francis weir, contracted",
    () => {
      for (let i = 0; i < rows; i++)
        out[i] =
          3.33 *
          rootFoot *
          (widths[i] - 0.1 * counts[i] * heads[i]) *
          heads[i] *
          Math.sqrt(heads[i]);
      return out[rows - 1];
    },
    () => {
      for (let i = 0; i < rows; i++)
        out[i] = body({ h: heads[i], b: widths[i], n: counts[i], P: depths[i], B: 4, C });
      return out[rows - 1];
    },
  );
}

function francisSuppressed() {
  const { body, constants } = francisSuppressedDischarge;
  const { C } = constants;
  return pair(
    "Francis weir, suppressed",
    () => {
      for (let i = 0; i < rows; i++)
        out[i] = 3.33 * rootFoot * widths[i] * heads[i] * Math.sqrt(heads[i]);
      return out[rows - 1];
    },
    () => {
      for (let i = 0; i < rows; i++) out[i] = body({ h: heads[i], b: widths[i], P: depths[i], C });
      return out[rows - 1];
    },
  );
}

function jet() {
  const { body } = jetFlow;
  return pair(
    "flow of a jet",
    () => {
      for (let i = 0; i < rows; i++)
        out[i] = 0.97 * (Math.PI / 4) * bores[i] * bores[i] * Math.sqrt(2 * gravity * pipes[i]);
      return out[rows - 1];
    },
    () => {
      for (let i = 0; i < rows; i++)
        out[i] = body({ H: pipes[i], d: bores[i], Cd: 0.97, g: gravity });
      return out[rows - 1];
    },
  );
}

function friction() {
  const { body } = frictionFactor;
  return pair(
    "friction factor, Colebrook–White solved",
    () => {
      for (let i = 0; i < rows; i++) out[i] = factorByHand(reynolds[i], relatives[i]);
      return out[rows - 1];
    },
    () => {
      for (let i = 0; i < rows; i++) out[i] = body({ Re: reynolds[i], r: relatives[i] });
      return out[rows - 1];
    },
  );
}

function reach() {
  const { body } = reachHeadLoss;
  const viscosity = 1.31e-6;
  return pair(
    "head lost in a reach with two fittings",
    () => {
      for (let i = 0; i < rows; i++) {
        const v = (4 * flows[i]) / (Math.PI * bores[i] * bores[i]);
        const f = factorByHand((v * bores[i]) / viscosity, roughnesses[i] / bores[i]);
        let sum = 0;
        for (const { K, n } of fittings[i]) sum += n * K;
        const velocityHead = (v * v) / (2 * gravity);
        out[i] = ((f * pipes[i]) / bores[i]) * velocityHead + sum * velocityHead;
      }
      return out[rows - 1];
    },
    () => {
      for (let i = 0; i < rows; i++) {
        const { hf, hk } = body({
          Q: flows[i],
          D: bores[i],
          ε: roughnesses[i],
          L: pipes[i],
          ν: viscosity,
          g: gravity,
          fittings: fittings[i],
        });
        out[i] = hf + hk;
      }
      return out[rows - 1];
    },
  );
}

function wire() {
  const { body } = loopDrop;
  return pair(
    "voltage lost along a loop",
    () => {
      for (let i = 0; i < rows; i++) out[i] = 2 * pipes[i] * perMetre[i] * currents[i];
      return out[rows - 1];
    },
    () => {
      for (let i = 0; i < rows; i++) out[i] = body({ L: pipes[i], r: perMetre[i], I: currents[i] });
      return out[rows - 1];
    },
  );
}

/** @returns {import("./measure.mjs").Group[]} */
export function bodies() {
  return [notch(), francisContracted(), francisSuppressed(), jet(), friction(), reach(), wire()];
}
