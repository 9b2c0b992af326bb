// A year of minutes: 525,600 levels through the V-notch, checked, against a loop that checks nothing.
import { vNotchDischarge } from "@leat/flow-measurement";
import { series } from "@leat/formula";
import { degree, metre } from "@leat/quantity";
import { Column } from "@leat/quantity/column";

import { same, spread } from "./invented.mjs";

const minutes = 525_600;
// Six in a hundred thousand lie below the weir's range, so that there is something to flag.
const levels = spread(minutes, 0.05999, 0.2, 31);

/** Factor and head correction of a notch of 90°. */
function notch() {
  const degrees = 90;
  const ce = 0.607165052 - 0.000874466963 * degrees + 6.10393334e-6 * degrees * degrees;
  const feet =
    0.0144902648 -
    0.00033955535 * degrees +
    3.29819003e-6 * degrees * degrees -
    1.06215442e-8 * degrees * degrees * degrees;
  return {
    factor: (8 / 15) * ce * Math.sqrt(2 * 9.80665) * Math.tan(Math.PI / 4),
    kh: feet * 0.3048,
  };
}

function byHand() {
  const { factor, kh } = notch();
  const out = new Float64Array(minutes);
  for (let i = 0; i < minutes; i++) {
    const he = levels[i] + kh;
    out[i] = factor * he * he * Math.sqrt(he);
  }
  return out;
}

/** @returns {import("./measure.mjs").Group[]} */
export function year() {
  const head = Column.of(metre, levels);
  const site = { angle: degree.of(90), crestHeight: metre.of(0.6), approachWidth: metre.of(2) };
  const { body, constants } = vNotchDischarge;
  const { ft, deg, rad } = constants;
  let told = 0;
  const options = { onNotice: () => (told += 1) };
  const groups = same([
    {
      name: "525,600 levels through a V-notch",
      ops: 1,
      per: "year of minutes",
      // Some ten runs a sample: the first of them finds the caches full of other groups' numbers.
      sample: 40,
      variants: [
        { name: "by hand, nothing checked", run: () => byHand()[minutes >> 1] },
        {
          name: "Leat, series: checked, flagged",
          gate: 1.5,
          run: () => series(vNotchDischarge, { head, ...site }, options).values[minutes >> 1],
        },
        {
          name: "Leat, formula body in a loop",
          run: () => {
            const out = new Float64Array(minutes);
            const θ = Math.PI / 2;
            for (let i = 0; i < minutes; i++)
              out[i] = body({ h: levels[i], θ, P: 0.6, B: 2, g: 9.80665, ft, deg, rad });
            return out[minutes >> 1];
          },
        },
      ],
    },
  ]);
  const expected = byHand();
  const { values } = series(vNotchDischarge, { head, ...site }, options);
  const row = expected.findIndex((n, i) => !(Math.abs(values[i] - n) <= 1e-9 * n));
  if (row >= 0)
    throw new Error(`row ${row}: the series gives ${values[row]}, not ${expected[row]}`);
  if (told === 0) throw new Error("no level was out of range: the check had nothing to find");
  return groups;
}
