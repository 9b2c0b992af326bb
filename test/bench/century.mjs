// A century of days: 36,525 flows to a duration curve, low flows and usable water, against a loop that checks nothing.
import {
  annualMinima,
  fixedFlow,
  flowDuration,
  flowExceeded,
  lowFlowQuantile,
  pearsonFrequencyFactorOf,
  residualAndUsable,
} from "@leat/hydrology";
import { cubicMetrePerSecond, day, percent, year } from "@leat/quantity";
import { Column, TimeAxis } from "@leat/quantity/column";

import { same, sequence } from "./invented.mjs";

const days = 36_525;
const start = "1900-04-01";

/** An invented stream: seasons, and floods that recede. */
function invented() {
  const next = sequence(47);
  const flows = new Float64Array(days);
  let flood = 0;
  for (let row = 0; row < days; row++) {
    flood = 0.93 * flood + (next() > 0.9 ? 0.4 * next() : 0);
    flows[row] = 0.05 + 0.03 * Math.cos((2 * Math.PI * row) / 365.25) + flood + 0.002 * next();
  }
  return flows;
}

const flows = invented();
const percentages = [
  1, 2, 5, 10, 15, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 98, 99,
];

/** What must stay, the most that is taken and the least that is worth taking, in m³/s. */
const [must, most, least] = [0.03, 0.12, 0.01];

/** What is left and what is usable of each day, and both by month; the answer is the volume of the usable. */
function usableByHand() {
  const left = new Float64Array(days);
  const usable = new Float64Array(days);
  const months = new Float64Array(36);
  let date = new Date(`${start}T00:00Z`);
  let month = date.getUTCMonth();
  let next = Date.UTC(date.getUTCFullYear(), month + 1, 1);
  let at = date.getTime();
  for (let row = 0; row < days; row++) {
    if (at >= next) {
      month = (month + 1) % 12;
      date = new Date(next);
      next = Date.UTC(date.getUTCFullYear(), date.getUTCMonth() + 1, 1);
    }
    at += 86_400_000;
    const flow = flows[row];
    let take = flow - must;
    if (take > most) take = most;
    if (take < least) take = 0;
    left[row] = flow - take;
    usable[row] = take;
    months[3 * month] += flow;
    months[3 * month + 1] += flow - take;
    months[3 * month + 2] += take;
  }
  let sum = 0;
  for (let at12 = 2; at12 < 36; at12 += 3) sum += months[at12];
  if (!(left[days - 1] + usable[days - 1] >= 0)) throw new Error("the last day is no number");
  return 86_400 * sum;
}

/** Years from April, as rows. */
function aprils() {
  const starts = [];
  let row = 0;
  for (let from = 1900; row < days; from++) {
    starts.push(row);
    const next = from + 1;
    row += next % 4 === 0 && (next % 100 !== 0 || next % 400 === 0) ? 366 : 365;
  }
  return row === days ? starts.concat(days) : starts;
}

function byHand() {
  const sorted = flows.toSorted();
  let sum = 0;
  for (const percentage of percentages) {
    const place = (1 - percentage / 100) * (days + 1) - 1;
    const low = Math.floor(place);
    sum += sorted[low] + (place - low) * (sorted[low + 1] - sorted[low]);
  }
  const starts = aprils();
  for (const n of [1, 7, 30]) {
    const minima = [];
    for (let at = 0; at + 1 < starts.length; at++) {
      let lowest = Infinity;
      let run = 0;
      for (let row = starts[at]; row < starts[at + 1]; row++) {
        run += flows[row];
        if (row - starts[at] >= n) run -= flows[row - n];
        if (row - starts[at] >= n - 1 && run < lowest) lowest = run;
      }
      minima.push(Math.log10(lowest / n));
    }
    const years = minima.length;
    const mean = minima.reduce((total, each) => total + each, 0) / years;
    const squares = minima.reduce((total, each) => total + (each - mean) ** 2, 0);
    const cubes = minima.reduce((total, each) => total + (each - mean) ** 3, 0);
    const s = Math.sqrt(squares / (years - 1));
    const skew = (years * cubes) / ((years - 1) * (years - 2) * s ** 3);
    sum += 10 ** (mean + s * pearsonFrequencyFactorOf(0.1, skew));
  }
  return sum + usableByHand();
}

/** @returns {import("./measure.mjs").Group[]} */
export function century() {
  const axis = TimeAxis.regular({ start, step: day.of(1), count: days, utcOffset: "+00:00" });
  const record = Column.wrap("volume flow", flows, new Uint8Array(days), { axis });
  const shares = percentages.map((n) => percent.of(n));
  const recurrence = year.of(10);
  const [stays, cap, worth] = [must, most, least].map((flow) => cubicMetrePerSecond.of(flow));
  const rule = fixedFlow({ flow: stays });
  return same([
    {
      name: "36,525 days to duration, low flows and usable water",
      ops: 1,
      per: "century of days",
      sample: 40,
      variants: [
        { name: "by hand, nothing checked", run: byHand },
        {
          name: "Leat, record checked, days counted",
          gate: 1.5,
          run: () => {
            const duration = flowDuration({ record });
            let sum = 0;
            for (const share of shares) sum += flowExceeded({ duration, share })["~si"];
            for (const each of [1, 7, 30]) {
              const minima = annualMinima({ record, days: each });
              sum += lowFlowQuantile({ minima, recurrence }).flow["~si"];
            }
            return (
              sum +
              residualAndUsable({ record, rule, most: cap, least: worth }).volumes.usable["~si"]
            );
          },
        },
      ],
    },
  ]);
}
