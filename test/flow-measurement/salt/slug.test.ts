import { saltSlug, type SaltSlugInput } from "@leat/flow-measurement";
import { NonPhysicalError, type Notice } from "@leat/formula";
import { seededRandom } from "@leat/numerics";
import {
  celsius,
  gram,
  kilogram,
  litrePerSecond,
  microsiemensPerCentimetre,
  microsiemensSecondPerCentimetre,
  milligramPerLitre,
  milligramPerLitrePerMicrosiemensPerCentimetre,
  percent,
  perKelvin,
  second,
} from "@leat/quantity";
import { Column, Quality, TimeAxis } from "@leat/quantity/column";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

import { flowOf, type Made, made, madeFactor, madeInput } from "./slugs.ts";

const codesOf = ({ notices }: { notices: readonly Notice[] }): string[] =>
  notices.map(({ code }) => code);
const messageOf = (slug: { notices: readonly Notice[] }, code: string): string | undefined =>
  slug.notices.find((notice) => notice.code === code)?.message;

/** How far off the flow is that a record was made with, %. */
const miss = (how: Made, input: SaltSlugInput = madeInput(how)): number =>
  100 * (flowOf(saltSlug(input)) / how.flow - 1);

const how: Made = { flow: 80, resolution: 0.1 };

describe("saltSlug on clean records of known flow", () => {
  it("recovers it within 0.5 %, whatever the stream, the shape and the logger", () => {
    fc.assert(
      fc.property(
        fc.record({
          flow: fc.double({ min: 5, max: 150, noNaN: true }),
          shape: fc.constantFrom("gamma" as const, "gauss" as const),
          order: fc.integer({ min: 3, max: 5 }),
          scale: fc.double({ min: 20, max: 40, noNaN: true }),
          step: fc.constantFrom(1, 2, 5),
          background: fc.double({ min: 20, max: 400, noNaN: true }),
        }),
        (record) => {
          expect(Math.abs(miss({ ...record, length: 900, resolution: 0.01 }))).toBeLessThan(0.5);
        },
      ),
      { numRuns: 200 },
    );
  });

  it("recovers it through a background that drifts, and tells how far", () => {
    fc.assert(
      fc.property(
        fc.double({ min: 10, max: 120, noNaN: true }),
        fc.double({ min: -12, max: 12, noNaN: true }),
        (flow, drift) => {
          const record = { flow, drift, resolution: 0.05 };
          expect(Math.abs(miss(record))).toBeLessThan(0.5);
        },
      ),
      { numRuns: 200 },
    );
    const slug = saltSlug(madeInput({ ...how, drift: 8 }));
    expect(codesOf(slug)).toEqual(["background-drift"]);
    expect(messageOf(slug, "background-drift")).toMatch(
      /^salt slug: the background ends 7\.[5-9]\d? µS\/cm above where it began, 15\.\d % of the peak\. A line between the two is taken off\.$/,
    );
    expect(messageOf(saltSlug(madeInput({ ...how, drift: -8 })), "background-drift")).toContain(
      "µS/cm below where it began",
    );
  });

  it("recovers it through scatter, within what it says of itself", () => {
    const random = seededRandom("a salt slug");
    const off = Array.from({ length: 100 }, () => {
      const slug = saltSlug(madeInput({ ...how, noise: () => random.normal(0, 0.5) }));
      return (flowOf(slug) - 80) / slug.flowAtProbe.standardUncertainty().in(litrePerSecond);
    });
    const root = Math.sqrt(off.reduce((sum, z) => sum + z * z, 0) / off.length);
    expect(root).toBeGreaterThan(0.5);
    expect(root).toBeLessThan(1.6);
  });

  it("gives the sum the doubt that scatter leaves in it", () => {
    const random = seededRandom("scatter");
    const slug = saltSlug(
      madeInput({ flow: 80, resolution: 1e-6, noise: () => random.normal(0, 0.5) }),
    );
    // A sum of n readings, a second each, each off by 0.5 µS/cm (one standard deviation).
    const rows = slug.window.to - slug.window.from + 1;
    const sampling = slug.conductivityTime.sources().get("salt slug: sampling")!;
    const ratio = sampling.in(microsiemensSecondPerCentimetre) / (0.5 * Math.sqrt(rows));
    expect(ratio).toBeGreaterThan(0.8);
    expect(ratio).toBeLessThan(1.25);
  });

  it("finds the arrival over a background that falls steeply", () => {
    for (const drift of [-10.75, -30, 30]) {
      const slug = saltSlug(madeInput({ flow: 101.08, drift, resolution: 0.1 }));
      expect(Math.abs(slug.arrival - 121)).toBeLessThan(8);
      expect(Math.abs(flowOf(slug) / 101.08 - 1)).toBeLessThan(0.005);
    }
  });

  it("is within four of its own uncertainties, or half a per cent, on all sorts of records", () => {
    const random = seededRandom("all sorts");
    for (let k = 0; k < 400; k += 1) {
      const flow = 5 * Math.exp(random.rectangular(0, 4));
      const order = 2 + random.below(4);
      const scale = random.rectangular(15, 50);
      const peak = 200_000 / (madeFactor * flow) / (2.5 * scale * Math.sqrt(order));
      const deviation = random.rectangular(0, 0.02 * peak);
      const record: Made = {
        flow,
        order,
        scale,
        shape: random.below(3) === 0 ? "gauss" : "gamma",
        step: [1, 2, 5, 10][random.below(4)]!,
        resolution: [0.01, 0.1, 1][random.below(3)]!,
        length: 1500,
        before: random.rectangular(60, 260),
        background: 85 + peak,
        drift: random.rectangular(-0.3, 0.3) * peak,
        noise: () => random.normal(0, deviation),
      };
      const slug = saltSlug(madeInput(record));
      const sure = slug.flowAtProbe.standardUncertainty().in(litrePerSecond) / flow;
      expect(Math.abs(flowOf(slug) / flow - 1), JSON.stringify(record)).toBeLessThan(
        4 * sure + 0.005,
      );
      expect(codesOf(slug), JSON.stringify(record)).not.toContain("tail-missing");
    }
  });

  it("scales with the mass, and not with the clock's zero", () => {
    const input = madeInput(how);
    const flow = flowOf(saltSlug(input));
    expect(flowOf(saltSlug({ ...input, mass: gram.of(400) })) / flow).toBeCloseTo(2, 9);
    const late = Array.from(input.time as number[], (t) => t + 1.7e9);
    expect(flowOf(saltSlug({ ...input, time: late })) / flow).toBeCloseTo(1, 6);
    // Twice as slow a clock is half the flow.
    const slow = Array.from(input.time as number[], (t) => 2 * t);
    expect(flowOf(saltSlug({ ...input, time: slow })) / flow).toBeCloseTo(0.5, 9);
  });

  it("takes the axis of the column, or an axis as the time", () => {
    const { values } = made(how);
    const axis = TimeAxis.regular({
      start: "2026-05-01T10:00",
      step: second.of(1),
      count: values.length,
      utcOffset: "+00:00",
    });
    const { time: _, ...input } = madeInput(how);
    const conductivity = Column.of(microsiemensPerCentimetre, values, { axis });
    const slug = saltSlug({ ...input, conductivity });
    expect(flowOf(slug)).toBeCloseTo(flowOf(saltSlug(madeInput(how))), 6);
    expect(slug.readings.axis?.isoAt(slug.readings.length - 1)).toBe("2026-05-01T10:12");
    expect(
      flowOf(saltSlug({ ...input, conductivity: input.conductivity, time: axis })),
    ).toBeCloseTo(flowOf(slug), 6);
  });

  it("tells when the cloud came, was strongest, and was gone, and how strong", () => {
    const slug = saltSlug(madeInput(how));
    // A gamma curve of order 3 is greatest two scales after it begins.
    expect(Math.abs(slug.arrival - 121)).toBeLessThan(4);
    expect(Math.abs(slug.peak - 180)).toBeLessThan(4);
    expect(slug.end).toBeGreaterThan(400);
    const peak = (200_000 / (madeFactor * 80)) * (2 * Math.exp(-2) * (1 / 30));
    expect(slug.peakRise.in(microsiemensPerCentimetre)).toBeCloseTo(peak, 0);
    expect(slug.peakConcentration.in(milligramPerLitre)).toBeCloseTo(peak * madeFactor, 0);
    expect(slug.peakChloride.in(milligramPerLitre)).toBeCloseTo(peak * madeFactor * 0.60663, 0);
    expect(slug.backgroundBefore?.in(microsiemensPerCentimetre)).toBeCloseTo(85, 1);
    expect(slug.backgroundAfter?.in(microsiemensPerCentimetre)).toBeCloseTo(85, 1);
    expect(slug.conductivityTime.in(microsiemensSecondPerCentimetre)).toBeCloseTo(
      200_000 / (madeFactor * 80),
      -2,
    );
    expect(slug.baseline.at(300)?.in(microsiemensPerCentimetre)).toBeCloseTo(85, 1);
    expect([slug.missingTail, slug.estimatedShare, slug.notices]).toEqual([undefined, 0, []]);
  });
});

describe("saltSlug and a worksheet of Lancaster University", () => {
  // White Scar, 4 February 1995: 900 g, a reading every half minute, 0.7 mg/L for each µS/cm. The sheet's own
  // column of concentrations over the background sums to 671 mg/L: 900 000 / (671 · 30 s) = 44.7 L/s.
  const readings = [
    125, 125, 125, 125, 250, 417, 369, 274, 202, 163, 145, 135, 130, 128, 127, 126, 126,
  ];
  it("finds its flow", () => {
    const slug = saltSlug({
      time: readings.map((_, i) => 30 * i),
      conductivity: Column.of(microsiemensPerCentimetre, readings),
      basis: "at 25 °C",
      mass: gram.of(900),
      calibration: {
        name: "sheet",
        factor: milligramPerLitrePerMicrosiemensPerCentimetre.of(0.7),
        basis: "at 25 °C",
        greatest: microsiemensPerCentimetre.of(500),
      },
    });
    expect(Math.abs(flowOf(slug) / (900_000 / (671 * 30)) - 1)).toBeLessThan(0.02);
    // 292 µS/cm are 124 mg/L of chloride: above one of the chronic values.
    expect(codesOf(slug)).toEqual(["few-readings", "chloride-chronic"]);
    expect(messageOf(slug, "few-readings")).toMatch(
      /^salt slug: \d+ readings while the cloud passed\. Log more often: 20 or more\.$/,
    );
  });
});

describe("saltSlug on faults of a logger", () => {
  const clean = flowOf(saltSlug(madeInput(how)));
  const broken = (change: (values: number[], time: number[]) => void) =>
    saltSlug(madeInput(how, change));
  const within = (
    slug: { flow: { in(unit: typeof litrePerSecond): number } },
    share: number,
  ): void => expect(Math.abs(flowOf(slug) / clean - 1)).toBeLessThan(share);

  it("bridges a fault code in the middle, and says so", () => {
    const slug = broken((values) => values.splice(170, 3, -9999, 9999, -999));
    within(slug, 0.001);
    expect(slug.faults.faultCode).toEqual([170, 171, 172]);
    expect(codesOf(slug)).toContain("readings-fault-code");
    expect(messageOf(slug, "readings-fault-code")).toBe(
      "salt slug: 3 rows: 170 to 172 hold a fault code of the logger. A straight line bridges them. Look at the chart before the answer is used.",
    );
    expect(slug.readings.quality[171]).toBe(Quality.suspect | Quality.estimated);
    expect(slug.readings.quality[173]).toBe(0);
    const line = [170, 171, 172, 173].map(
      (row) => slug.readings.values[row]! - slug.readings.values[row - 1]!,
    );
    for (const step of line) expect(step).toBeCloseTo(line[0]!, 12);
  });

  it("takes the codes that are given, and no others", () => {
    const input = madeInput(how, (values) => values.splice(300, 1, 6999));
    expect(
      saltSlug({ ...input, faultCodes: [microsiemensPerCentimetre.of(6999)] }).faults.faultCode,
    ).toEqual([300]);
    expect(saltSlug(input).faults.spike).toEqual([300]);
  });

  it("bridges gaps, and leaves those at the ends out", () => {
    const input = madeInput(how);
    const values: (number | null)[] = [...made(how).values];
    for (const row of [0, 1, 175, 176, 720]) values[row] = null;
    const slug = saltSlug({ ...input, conductivity: Column.of(microsiemensPerCentimetre, values) });
    within(slug, 0.001);
    expect(slug.faults.gap).toEqual([0, 1, 175, 176, 720]);
    expect(messageOf(slug, "readings-gap")).toBe(
      "salt slug: 5 rows: 0, 1, 175, 176, 720 hold nothing. A straight line bridges those with good readings on both sides, the others are left out. Look at the chart before the answer is used.",
    );
    expect(slug.readings.quality[720]).toBe(Quality.gap);
    expect(slug.readings.quality[175]).toBe(Quality.estimated);
  });

  it("bridges what no stream conducts", () => {
    const slug = broken((values) => values.splice(250, 2, -3, 250_000));
    within(slug, 0.001);
    expect(slug.faults.impossible).toEqual([250, 251]);
    expect(messageOf(slug, "readings-impossible")).toContain(
      "2 rows: 250, 251 hold what no stream conducts",
    );
    const input = madeInput(how, (values) => values.splice(250, 1, 900));
    const most = { ...input, greatestPossible: microsiemensPerCentimetre.of(800) };
    expect(saltSlug(most).faults.impossible).toEqual([250]);
  });

  it("bridges spikes of one to three readings, on the rise, in the tail and in the background", () => {
    const slug = broken((values) => {
      values[60]! += 5;
      values[150]! += 60;
      for (const row of [300, 301, 302]) values[row]! -= 20;
    });
    within(slug, 0.001);
    expect(slug.faults.spike).toEqual([60, 150, 300, 301, 302]);
    expect(messageOf(slug, "readings-spike")).toContain(
      "5 rows: 60, 150, 300 to 302 stand apart from the readings on either side",
    );
  });

  it("takes no sharp front or narrow peak for a spike, nor a quiet background for a stuck sensor", () => {
    for (const record of [
      { flow: 80, order: 2, scale: 20, step: 15, resolution: 1 },
      { flow: 80, shape: "gauss" as const, scale: 12, step: 10, resolution: 0.1 },
      { flow: 20, order: 2, scale: 20, resolution: 1 },
    ]) {
      const { spike, stuck } = saltSlug(madeInput(record)).faults;
      expect([spike, stuck]).toEqual([[], []]);
    }
  });

  it("takes a front of one reading before a falling tail for a peak, not for a spike", () => {
    const tail = (front: number): number[] => [
      ...Array.from({ length: 30 }, () => 85),
      front,
      150,
      110,
      95,
      90,
      88,
      87,
      86,
      ...Array.from({ length: 30 }, () => 85),
    ];
    const spikes = (values: number[]): readonly number[] =>
      saltSlug({
        ...madeInput(how),
        time: values.map((_, i) => 10 * i),
        conductivity: Column.of(microsiemensPerCentimetre, values),
      }).faults.spike;
    expect(spikes(tail(300))).toEqual([]);
    // Between sides that agree it would be one.
    expect(spikes(tail(85).with(10, 300))).toEqual([10]);
  });

  it("bridges a sensor that is stuck, and gives the bridge its doubt", () => {
    const slug = broken((values) => values.fill(values[140]!, 140, 160));
    within(slug, 0.006);
    expect(slug.faults.stuck).toEqual(Array.from({ length: 19 }, (_, i) => 141 + i));
    expect(messageOf(slug, "readings-stuck")).toContain(
      "19 rows: 141 to 159 are equal while the water changed: the sensor was stuck",
    );
    expect(messageOf(slug, "much-estimated")).toMatch(
      /^salt slug: 1\d\.\d % of the sum lies under bridged readings \(19 rows: 141 to 159\)\.$/,
    );
    const doubt = (id: string, of = slug): number => of.flow.sources().get(id)!.in(litrePerSecond);
    const undisturbed = saltSlug(madeInput(how));
    expect(Math.abs(doubt("salt slug: sampling"))).toBeGreaterThan(
      5 * Math.abs(doubt("salt slug: sampling", undisturbed)),
    );
  });

  it("leaves out what follows where it stays stuck, and says what is missing", () => {
    const slug = broken((values) => values.fill(values[220]!, 220));
    expect(slug.faults.stuck.at(-1)).toBe(720);
    expect(codesOf(slug)).toEqual(["readings-stuck", "tail-missing"]);
  });

  it("puts a time that goes back between its neighbours", () => {
    const slug = broken((_, time) => {
      time[200] = 150;
      time[500] = 9999;
    });
    within(slug, 1e-9);
    expect(slug.faults.time).toEqual([200, 500]);
    expect([slug.time[200], slug.time[500]]).toEqual([200, 500]);
    expect(messageOf(slug, "readings-time")).toBe(
      "salt slug: 2 rows: 200, 500 have a time that does not rise. Their times are estimated from the rows on either side. Look at the chart before the answer is used.",
    );
    expect(slug.readings.quality[200]).toBe(Quality.suspect | Quality.estimated);
    const ends = broken((_, time) => {
      time[0] = 50;
      time[720] = 3;
    });
    expect([ends.time[0], ends.time[720]]).toEqual([0, 720]);
  });

  it("shortens a long list of rows", () => {
    const slug = broken((values) => {
      for (let row = 10; row < 110; row += 10) values[row] = -9999;
    });
    expect(messageOf(slug, "readings-fault-code")).toContain(
      "10 rows: 10, 20, 30, 40, 50, 60 and more hold a fault code",
    );
  });
});

describe("saltSlug on a record that ends too early or begins too late", () => {
  it("says how much of the tail is missing, and adds it only where it is asked to", () => {
    const short = madeInput({ ...how, length: 270 });
    const slug = saltSlug(short);
    const notice = slug.notices.find(({ code }) => code === "tail-missing");
    expect(notice?.severity).toBe("stop");
    expect(notice?.message).toMatch(
      /^salt slug: the record ends before the background is back\. An exponential through its end would add \d+ µS·s\/cm, \d+\.\d % of the sum, by which the flow is too great; it is not added unless addMissingTail asks for it\. Log until the background is back\.$/,
    );
    expect(flowOf(slug)).toBeGreaterThan(84);
    const added = saltSlug({ ...short, addMissingTail: true });
    expect(Math.abs(flowOf(added) / 80 - 1)).toBeLessThan(0.06);
    expect(added.notices.find(({ code }) => code === "tail-missing")?.severity).toBe("caution");
    expect(messageOf(added, "tail-missing")).toContain(
      "by which the flow is lowered; half of that is taken as its uncertainty",
    );
    expect(
      added.missingTail!.plus(slug.conductivityTime).in(microsiemensSecondPerCentimetre),
    ).toBeCloseTo(added.conductivityTime.in(microsiemensSecondPerCentimetre), 9);
    const half = added.conductivityTime.sources().get("salt slug: missing tail")!;
    expect(half.in(microsiemensSecondPerCentimetre)).toBeCloseTo(
      added.missingTail!.in(microsiemensSecondPerCentimetre) / 2,
      9,
    );
  });

  it("is a caution where little is missing, and nothing where the sum is ended by hand", () => {
    const slug = saltSlug(madeInput({ ...how, length: 330 }));
    expect(slug.notices.map(({ code, severity }) => `${code} ${severity}`)).toEqual([
      "tail-missing caution",
    ]);
    const window = { from: 110, to: 320 };
    const byHand = saltSlug({
      ...madeInput({ ...how, length: 330 }),
      window,
      background: { before: { from: 0, to: 100 } },
    });
    expect(byHand.missingTail).toBeUndefined();
    // What still falls is no background, even where a window is given.
    const cut = saltSlug({ ...madeInput({ ...how, length: 330 }), window: { from: 110, to: 300 } });
    expect(cut.backgroundAfter).toBeUndefined();
    expect(byHand.window).toEqual(window);
  });

  it("extrapolates an exponential tail exactly", () => {
    // From 300 s on the record is an exponential of 60 s, 40 µS/cm high there.
    const values = Array.from({ length: 361 }, (_, t) =>
      t < 100 ? 50 : t < 200 ? 50 + t - 100 : 50 + 100 * Math.exp(-(t - 200) / 60),
    );
    const slug = saltSlug({
      ...madeInput(how),
      time: values.map((_, t) => t),
      conductivity: Column.of(microsiemensPerCentimetre, values),
    });
    expect(slug.missingTail?.in(microsiemensSecondPerCentimetre)).toBeCloseTo(
      100 * 60 * Math.exp(-160 / 60),
      3,
    );
  });

  it("takes the background after for that before, where there is none", () => {
    const slug = saltSlug(madeInput({ ...how, before: 0 }));
    expect(Math.abs(flowOf(slug) / 80 - 1)).toBeLessThan(0.005);
    expect(slug.backgroundBefore).toBeUndefined();
    expect(slug.notices.map(({ message }) => message)).toEqual([
      "salt slug: the record has no background before the cloud; that after it stands in. Switch the logger on before the throw.",
    ]);
  });

  it("stops where the front is missing", () => {
    const slug = saltSlug(madeInput({ ...how, before: -40 }));
    expect(slug.notices.map(({ code, severity }) => `${code} ${severity}`)).toEqual([
      "front-missing stop",
      "no-background-before caution",
    ]);
    expect(messageOf(slug, "front-missing")).toBe(
      "salt slug: the record begins within the cloud, and nothing tells how much of it is missing. The flow is too great. Log from before the throw.",
    );
  });

  it("tells a background that does not stand still", () => {
    const slug = saltSlug({
      ...madeInput({ ...how, length: 900 }),
      window: { from: 110, to: 300 },
      background: { before: { from: 0, to: 100 }, after: { from: 301, to: 420 } },
    });
    expect(messageOf(slug, "background-unsteady")).toMatch(
      /^salt slug: the background after the cloud changes by \d+(\.\d+)? µS\/cm from its first half to its second\. Look at the chart: it may hold a part of the cloud\.$/,
    );
  });
});

describe("saltSlug with window and background given", () => {
  it("sums what it is told to", () => {
    const input = madeInput({ flow: 80 });
    const given = saltSlug({
      ...input,
      window: { from: 110, to: 600 },
      background: { before: { from: 0, to: 100 }, after: { from: 620, to: 720 } },
    });
    expect(Math.abs(flowOf(given) / 80 - 1)).toBeLessThan(1e-3);
    expect(given.window).toEqual({ from: 110, to: 600 });
    const constant = saltSlug({ ...input, background: { before: { from: 0, to: 100 } } });
    expect(constant.backgroundAfter).toBeUndefined();
    expect(Math.abs(flowOf(constant) / 80 - 1)).toBeLessThan(2e-3);
  });

  it("finds the background outside a window that is given", () => {
    const slug = saltSlug({ ...madeInput({ flow: 80 }), window: { from: 100, to: 600 } });
    expect(slug.backgroundBefore?.in(microsiemensPerCentimetre)).toBeCloseTo(85, 9);
    expect(slug.backgroundAfter?.in(microsiemensPerCentimetre)).toBeCloseTo(85, 2);
  });

  it("refuses parts of the record that hold nothing", () => {
    const input = madeInput(how);
    expect(() => saltSlug({ ...input, window: { from: 800, to: 900 } })).toThrow(
      "salt slug: window, 800 s to 900 s, holds fewer than two good readings; the record has 0 s to 720 s.",
    );
    expect(() => saltSlug({ ...input, window: { from: 0, to: 720 } })).toThrow(
      "salt slug: the record has no background before the cloud nor after it. Give background, or log from before the throw until it is back.",
    );
    const upsideDown = { before: { from: 170, to: 200 } };
    expect(() => saltSlug({ ...input, background: upsideDown })).toThrow(
      /^salt slug: the rise over the background sums to -\d+ µS·s\/cm, not above zero\. Check window and background\.$/,
    );
  });
});

describe("saltSlug and the temperature", () => {
  const warming = (t: number): number => 8 + (2 * t) / 720;
  const raw = (change: Partial<SaltSlugInput> = {}): SaltSlugInput => {
    const { time, values } = made({ flow: 80 });
    return {
      ...madeInput(how),
      basis: "raw",
      conductivity: Column.of(
        microsiemensPerCentimetre,
        values.map((value, i) => value * (1 + 0.02 * (warming(time[i]!) - 25))),
      ),
      temperature: { celsius: time.map(warming) },
      ...change,
    };
  };

  it("brings raw readings to 25 °C, with the doubt about how", () => {
    const slug = saltSlug(raw());
    expect(Math.abs(flowOf(slug) / 80 - 1)).toBeLessThan(0.003);
    expect(codesOf(slug)).toEqual([]);
    // Q goes with 1 + α (T − 25): at 8.6 °C −16.4 K · 0.00051 / 0.672.
    const share = slug.flow.sources().get("temperature coefficient")!.in(litrePerSecond) / 80;
    expect(share).toBeCloseTo((-16.4 * (0.001 / 1.959964)) / 0.672, 3);
    const known = saltSlug(raw({ temperatureCoefficient: perKelvin.of(0.02) }));
    expect(known.flow.sources().has("temperature coefficient")).toBe(false);
    expect(flowOf(known)).toBeCloseTo(flowOf(slug), 9);
  });

  it("leaves readings alone that the meter compensated: they are not compensated twice", () => {
    const input = { ...madeInput(how), temperature: celsius.at(9) };
    expect(flowOf(saltSlug(input))).toBe(flowOf(saltSlug(madeInput(how))));
    // Called raw, they are 47 % too high, and the flow too small by as much.
    const twice = saltSlug({ ...input, basis: "raw" });
    expect(flowOf(twice) / 80).toBeCloseTo(0.68, 2);
  });

  it("suspects readings called raw that do not follow the temperature, and the other way round", () => {
    const { time } = made(how);
    const temperature = { celsius: time.map(warming) };
    const twice = saltSlug({ ...madeInput(how), basis: "raw", temperature });
    expect(messageOf(twice, "looks-compensated")).toMatch(
      /^salt slug: the readings are called raw, but the background follows the temperature by -?0\.0 % a kelvin and not by 2\.9 %\. A meter that compensates by itself would be compensated twice: look at its setting\.$/,
    );
    const never = saltSlug(raw({ basis: "at 25 °C" }));
    expect(messageOf(never, "looks-raw")).toMatch(
      /^salt slug: the readings are called compensated, but the background follows the temperature by 2\.9 % a kelvin\. Look at the setting of the meter, and call them raw if it does not compensate\.$/,
    );
  });

  it("uses raw readings with a raw calibration, and says what changing water does to them", () => {
    const { calibration } = madeInput(how);
    const slug = saltSlug(raw({ calibration: { ...calibration!, basis: "raw" } }));
    expect(messageOf(slug, "raw-in-changing-water")).toMatch(
      /^salt slug: the water changed by 1\.\d K while the salt passed, and raw readings follow it by 2\.\d %\. Calibrate with the temperature written down, so that both can be brought to 25 °C\.$/,
    );
    const { temperature: _, ...without } = raw({ calibration: { ...calibration!, basis: "raw" } });
    expect(messageOf(saltSlug(without), "raw-without-temperature")).toContain(
      "salt slug: raw readings without a temperature. The flow is right only if the water was as warm as in the calibration",
    );
  });

  it("refuses readings and a factor of two sorts", () => {
    const { temperature: _, ...without } = raw();
    expect(() => saltSlug(without)).toThrow(
      "salt slug: the readings are raw and have no temperature, the factor (as made) is of conductivity at 25 °C. Give the temperature of the water.",
    );
    const { calibration } = madeInput(how);
    expect(() =>
      saltSlug({ ...madeInput(how), calibration: { ...calibration!, basis: "raw" } }),
    ).toThrow(
      "salt slug: the readings are at 25 °C, the factor (as made) is of raw ones. Calibrate with the temperature written down.",
    );
  });

  it("bridges temperatures that no stream has, and refuses none at all", () => {
    const degrees: (number | null)[] = Array.from({ length: 721 }, (_, t) => warming(t));
    degrees[300] = -9999;
    degrees[301] = null;
    degrees[0] = 99;
    const slug = saltSlug(raw({ temperature: { celsius: degrees } }));
    expect(Math.abs(flowOf(slug) / 80 - 1)).toBeLessThan(0.003);
    expect(messageOf(slug, "temperature-readings")).toBe(
      "salt slug: temperature of 3 rows: 0, 300, 301 is missing or impossible. Its neighbours stand in.",
    );
    expect(() => saltSlug(raw({ temperature: { celsius: [9] } }))).toThrow(
      "salt slug: temperature has 1 rows, conductivity 721. Give as many.",
    );
    expect(() =>
      saltSlug(raw({ temperature: { celsius: new Float64Array(721).fill(281) } })),
    ).toThrow("salt slug: temperature has no reading from -2 °C to 45 °C. Give degrees Celsius.");
  });
});

describe("saltSlug and its factor", () => {
  const { calibration, ...without } = madeInput(how);

  it("says where the factor of any stream stands in, and where it was not tried", () => {
    const slug = saltSlug(without);
    expect(flowOf(slug)).toBeCloseTo(flowOf(saltSlug(madeInput(how))), 9);
    expect(slug.notices.map(({ message }) => message)).toEqual([
      "salt slug: no calibration; the factor of any stream stands in, ± 2.9 %. Calibrate with this probe in this water for ± 0.7 %.",
    ]);
    const { calibration: _, ...hard } = madeInput({ ...how, background: 620 });
    expect(messageOf(saltSlug(hard), "standard-factor-background")).toBe(
      "salt slug: background = 620 µS/cm is above 500 µS/cm, up to which the factor of any stream was tried. Calibrate in this water.",
    );
  });

  it("says where the calibration does not reach", () => {
    const greatest = microsiemensPerCentimetre.of(110);
    const slug = saltSlug({ ...without, calibration: { ...calibration!, greatest } });
    expect(messageOf(slug, "beyond-calibration")).toMatch(
      /^salt slug: the peak, 13\d µS\/cm, is above the 110 µS\/cm that the calibration \(as made\) reaches\. Add more standard next time\.$/,
    );
  });

  it("names each source of uncertainty", () => {
    const factor = milligramPerLitrePerMicrosiemensPerCentimetre;
    const slug = saltSlug({
      ...without,
      name: "left",
      mass: gram.of(200).plusMinus(gram.of(4), "scale"),
      calibration: {
        ...calibration!,
        factor: factor.of(0.486).plusMinus(factor.of(0.01), "salt calibration"),
      },
    });
    const shares = Object.fromEntries(
      Array.from(slug.flow.sources(), ([id, c]) => [
        id,
        Math.abs((196 * c.in(litrePerSecond)) / flowOf(slug)),
      ]),
    );
    expect(Object.keys(shares)).toEqual([
      "scale",
      "salt calibration",
      "left: background before",
      "left: background after",
      "left: sampling",
      "left: mixing",
    ]);
    expect(shares["scale"]).toBeCloseTo(2, 2);
    expect(shares["salt calibration"]).toBeCloseTo(100 / 48.6, 2);
    // A single probe: two banks that differ by 5 % leave one of them 3.5 % (one standard deviation) off.
    expect(shares["left: mixing"]).toBeCloseTo(7, 2);
    expect(shares["left: mixing"]).toBeCloseTo((196 * 0.05) / Math.SQRT2, 0);
    expect(slug.flowAtProbe.sources().has("left: mixing")).toBe(false);
    const sure = saltSlug({ ...without, calibration, mixing: percent.of(3) });
    expect(
      (196 * sure.flow.sources().get("salt slug: mixing")!.in(litrePerSecond)) / flowOf(sure),
    ).toBeCloseTo(3, 2);
  });

  it("tells a weak peak, a strong one, and what it cannot use", () => {
    const weak = saltSlug(madeInput({ ...how, flow: 300, resolution: 1, mass: 150 }));
    expect(messageOf(weak, "weak-slug")).toMatch(
      /^salt slug: the peak rises by \d+(\.\d+)? µS\/cm, less than 20 steps or scatters of the meter \(1 µS\/cm\)\. Throw in more salt, if the stream may have it\.$/,
    );
    const strong = saltSlug(madeInput({ ...how, flow: 2 }));
    expect(codesOf(strong)).toEqual(["chloride-chronic", "chloride-chronic"]);
    const told: Notice[] = [];
    saltSlug(madeInput({ ...how, flow: 2 }), { onNotice: (notice) => told.push(notice) });
    expect(told).toEqual(strong.notices);
  });

  it("refuses a record without a cloud, without salt, without time", () => {
    const refusal =
      (input: SaltSlugInput): (() => void) =>
      () =>
        void saltSlug(input);
    const input = madeInput(how);
    expect(refusal(madeInput({ ...how, flow: 1e6 }))).toThrow(NonPhysicalError);
    expect(refusal(madeInput({ ...how, flow: 1e6 }))).toThrow(
      "salt slug: no cloud of salt stands out of the scatter of 0 µS/cm. Give window and background if you see one, or throw in more salt.",
    );
    expect(refusal({ ...input, mass: kilogram.of(0) })).toThrow(
      "salt slug: mass = 0 kg is not above zero. Weigh the salt.",
    );
    expect(refusal({ ...input, time: undefined })).toThrow(
      "salt slug: time is missing, and the column has no axis. Give the seconds of each row.",
    );
    expect(refusal({ ...input, time: [0, 1, 2] })).toThrow(
      "salt slug: time has 3 rows, conductivity 721. Give as many.",
    );
    const gone = Array.from(input.time as number[]);
    gone[4] = Number.NaN;
    expect(refusal({ ...input, time: gone })).toThrow(
      "salt slug: time, row 4, is not a number of seconds. Leave the row out or give its time.",
    );
    expect(refusal({ ...input, time: new Float64Array(721) })).toThrow(
      "salt slug: time does not rise anywhere. Give the seconds of each row.",
    );
    const dead = Column.of(microsiemensPerCentimetre, new Float64Array(721).fill(-9999));
    expect(refusal({ ...input, conductivity: dead })).toThrow(
      "salt slug: conductivity has 0 good readings of 721. Give a record with the background before and after.",
    );
  });
});
