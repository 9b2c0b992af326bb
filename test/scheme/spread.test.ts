import { cubicMetrePerSecond, watt } from "@leat/quantity";
import { accountNotice, openBy, type Designed, type Parameter } from "@leat/scheme";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { customary, designed, fiveLines } from "./surveys.ts";

const half = (text: string): number => designed(text).design.headline!.half.in(watt);

function parameter({ plan }: Designed, key: string): Parameter {
  const found = plan.parameters.find((one) => one.key === key);
  if (!found) throw new Error(`no ${key}`);
  return found;
}

/** Standard uncertainty of the measured flow, over the flow. */
function relative(made: Designed): number {
  const { value, spread } = parameter(made, "stream.flow");
  return spread!.standard / value;
}

/** What one reading adds to the standard uncertainty of a measured number. */
function contribution(made: Designed, key: string, reading: string): number {
  const { spread, parts } = parameter(made, key);
  const part = parts!.find((one) => one.key === reading);
  if (!part) throw new Error(`no ${reading} in ${parts!.map((one) => one.key).join(", ")}`);
  return Math.abs(part.share) * spread!.standard;
}

describe("each measurement that would narrow the watts", () => {
  // Three numbers that carry their own ±, each large enough to be among the first three.
  const text = customary.replace("100 ft ± 1 ft", "100 ft ± 5 ft");
  const written: Readonly<Record<string, readonly [string, string]>> = {
    "fall.gross": ["100 ft ± 5 ft", "100 ft ± 0.0001 ft"],
    "wheel.efficiency": ["70 % ± 5 %", "70 % ± 0.0001 %"],
    "machine.efficiency": ["80 % ± 5 %", "80 % ± 0.0001 %"],
  };
  const { design } = designed(text);

  it("is one of the three that weigh most, the strongest first", () => {
    expect(new Set(design.narrow.map(({ key }) => key))).toEqual(new Set(Object.keys(written)));
    const halves = design.narrow.map((one) => one.half.in(watt));
    expect(halves).toEqual(halves.toSorted((a, b) => a - b));
  });

  it.each(design.narrow.map(({ key }) => key))("gives what it promises: %s", (key) => {
    const promised = design.narrow.find((one) => one.key === key)!.half.in(watt);
    const [now, sharp] = written[key]!;
    const got = half(text.replace(now, sharp));
    expect(Math.abs(got / promised - 1)).toBeLessThan(0.05);
    expect(got).toBeLessThan(half(text) * 0.99);
  });
});

describe("the half width", () => {
  it("is the root of the squares of each share alone", () => {
    // By hand, from three schemes that each have one ± only: watts go with both efficiencies.
    const bare = customary.replace(/ ± [\d.]+ (ft|gal\/min|%)/gu, " ± 0.00001 $1");
    const wheel = half(bare.replace("70 % ± 0.00001 %", "70 % ± 5 %"));
    const machine = half(bare.replace("80 % ± 0.00001 %", "80 % ± 5 %"));
    const both = half(
      bare.replace("70 % ± 0.00001 %", "70 % ± 5 %").replace("80 % ± 0.00001 %", "80 % ± 5 %"),
    );
    const none = half(bare);
    expect(Math.hypot(wheel, machine) ** 2 - none ** 2).toBeCloseTo(both ** 2, -1);
  });

  it("by drawing is within the noise of 2,000 draws of a product's own spread", () => {
    const wild = customary
      .replace("70 % ± 5 %", "70 % ± 60 %")
      .replace("80 % ± 5 %", "80 % ± 60 %");
    const { design } = designed(wild);
    expect(design.headline!.method).toBe("drawing");
    // A second drawing, of a sequence of its own: watts are near proportional to the product of both.
    let state = 12345;
    const uniform = (): number => {
      state = (state * 16807) % 2147483647;
      return state / 2147483647;
    };
    const normal = (): number =>
      Math.sqrt(-2 * Math.log(uniform())) * Math.cos(2 * Math.PI * uniform());
    const products: number[] = [];
    while (products.length < 40_000) {
      const [a, b] = [0.7 + (0.6 / 1.96) * normal(), 0.8 + (0.6 / 1.96) * normal()];
      if (a >= 0 && a <= 1 && b >= 0 && b <= 1) products.push((a * b) / 0.56);
    }
    products.sort((a, b) => a - b);
    const expected = (products[39_000]! - products[1000]!) / 2;
    const got = design.headline!.half.in(watt) / design.headline!.watts.in(watt);
    expect(Math.abs(got / expected - 1)).toBeLessThan(0.08);
  });
});

describe("a ± that was written", () => {
  const bucket = (rows: string): string =>
    fiveLines.replace("400 gal/min", `{ bucket: [${rows}] }`);

  it("counts for the vessel of timed fillings, and no ± 3 % is taken", () => {
    const rows = (spread: string): string =>
      ["9.8 s", "10.2 s", "10.0 s"]
        .map((time) => `{ volume: 20 L${spread}, time: ${time} }`)
        .join(", ");
    const taken = designed(bucket(rows("")));
    const given = designed(bucket(rows(" ± 2 L")));
    const listed = ({ design }: Designed): boolean =>
      design.assumed.some(({ what }) => what === "spread of the vessel's volume");
    expect(listed(taken)).toBe(true);
    expect(listed(given)).toBe(false);
    // By hand: flows 20/9.8, 20/10.2, 20/10 L/s; their deviation over √3, times t(0.975; 2) = 4.303 over 1.96.
    const flows = [20 / 9.8, 20 / 10.2, 2];
    const mean = (flows[0]! + flows[1]! + flows[2]!) / 3;
    const deviation = Math.sqrt(flows.reduce((sum, q) => sum + (q - mean) ** 2, 0) / 2);
    const repeats = ((deviation / Math.sqrt(3)) * 4.303) / 1.96;
    const spread = (vessel: number): number => Math.hypot(repeats, vessel * mean) / mean;
    expect(relative(taken) / spread(0.03 / 1.96)).toBeCloseTo(1, 3);
    // ± 2 L of 20 L is a tenth at 95 %.
    const tenth = relative(given);
    expect(Math.abs(tenth / spread(0.1 / 1.96) - 1)).toBeLessThan(0.001);
    expect(given.design.stream.measured.in(cubicMetrePerSecond)).toBeCloseTo(mean / 1000, 12);
  });

  it("counts for the clock, and for fittings whose every coefficient has one", () => {
    const rows = (time: string): string =>
      ["10.0 s", "10.0 s"].map((t) => `{ volume: 20 L ± 0.001 L, time: ${t}${time} }`).join(", ");
    // Two fillings of one time do not scatter; ± 1 s on each of two of 10 s is 0.1/√2 of the mean at 95 %.
    const clock = relative(designed(bucket(rows(" ± 1 s"))));
    expect(Math.abs(clock / (0.1 / Math.SQRT2 / 1.96) - 1)).toBeLessThan(0.001);
    const fitted = designed(
      customary.replace(
        "{ k: 0.5 }, { k: 0.4, count: 2 }",
        "{ k: 0.5 ± 0.1 }, { k: 0.4 ± 0.1, count: 2 }",
      ),
    );
    // √(0.1² + (2 × 0.1)²) of 0.5 + 2 × 0.4 = 1.3.
    const spread = parameter(fitted, "reaches.1.fittings").spread!;
    expect(spread.basis).toBe("written");
    expect(Math.abs(spread.standard / (Math.hypot(0.1, 0.2) / 1.3 / 1.96) - 1)).toBeLessThan(0.001);
    expect(parameter(designed(customary), "reaches.1.fittings").spread!.basis).toBe("assumed");
  });

  it("counts for a roughness", () => {
    const made = designed(customary.replace("0.0002 in", "0.0002 in ± 0.0001 in"));
    const { spread } = parameter(made, "reaches.1.roughness");
    expect(spread!.basis).toBe("written");
    expect(Math.abs(spread!.standard / ((0.0001 * 0.0254) / 1.96) - 1)).toBeLessThan(0.001);
    expect(parameter(designed(customary), "reaches.1.roughness").spread).toBeUndefined();
  });
});

describe("a pipe of two reaches", () => {
  const text = customary.replace(
    "jets:",
    "  - { pipe: 3 in PE DR 11, length: 200 ft, fittings: [{ k: 0.3 }] }\njets:",
  );
  const made = designed(text);
  const account = {
    gross: made.numbers.gross,
    losses: made.design.account.losses.map(({ name, path, power }) => ({
      name,
      path,
      watts: power.in(watt),
    })),
    delivered: made.numbers.delivered,
  };

  it("has losses of its own for each, all with names of their own", () => {
    expect(new Set(account.losses.map(({ name }) => name)).size).toBe(8);
    expect(account.losses.every(({ watts }) => watts > 0)).toBe(true);
    expect(Math.abs(openBy(account))).toBeLessThanOrEqual(1e-9 * account.gross);
  });

  it.each(account.losses.map((_, i) => i))("tells 1 %% more or less in loss %i", (at) => {
    for (const factor of [1.01, 0.99]) {
      const losses = account.losses.map((loss, i) =>
        i === at ? { ...loss, watts: loss.watts * factor } : loss,
      );
      expect(accountNotice({ ...account, losses })?.code).toBe("account-open");
    }
  });

  it("tells a loss that is left out, and 1 % in gross or delivered", () => {
    expect(accountNotice({ ...account, losses: account.losses.slice(1) })).toBeDefined();
    expect(accountNotice({ ...account, gross: account.gross * 1.01 })).toBeDefined();
    expect(accountNotice({ ...account, delivered: account.delivered * 1.01 })).toBeDefined();
  });
});

describe("more water through the same pipe and cable, the nozzles following", () => {
  const at = (litres: number): Designed =>
    designed(
      customary
        .replace("400 gal/min ± 20 gal/min, leave: 30 %", `${litres} L/s, leave: 0 %`)
        .replace("nozzles: [0.6 in, 0.6 in]", "count: 2"),
    );

  it("gives more watts while the pipe loses less than a third of the fall", () => {
    fc.assert(
      fc.property(fc.double({ min: 2, max: 16, noNaN: true }), (q) => {
        const [less, more] = [at(q), at(q * 1.02)];
        fc.pre(1 - more.numbers.netHead / more.numbers.grossHead < 0.33);
        expect(more.numbers.delivered).toBeGreaterThan(less.numbers.delivered);
      }),
      { numRuns: 25, seed: 40 },
    );
  });

  it("gives fewer watts well past a third, and that is told", () => {
    const [less, more] = [at(20), at(21)];
    expect(1 - less.numbers.netHead / less.numbers.grossHead).toBeGreaterThan(0.4);
    expect(more.numbers.delivered).toBeLessThan(less.numbers.delivered);
    expect(more.design.notices.map(({ code }) => code)).toContain("pipe-loss");
    expect(at(5).design.notices.map(({ code }) => code)).not.toContain("pipe-loss");
  });
});

describe("what is assumed", () => {
  /** The site with its place, and a ± on every coefficient: nothing is left to be taken. */
  const whole = customary
    .replace("water temperature", "latitude: 44°, elevation: 300 m, water temperature")
    .replace("{ k: 0.5 }, { k: 0.4, count: 2 }", "{ k: 0.5 ± 0.1 }, { k: 0.4 ± 0.1, count: 2 }");

  it("is only what no survey can give yet, where everything is written", () => {
    const { assumed } = designed(whole).design;
    expect(assumed.map((one) => one.path.join("."))).toEqual([
      "machine.openCircuit",
      "divert.tank.heating",
    ]);
  });

  it.each([
    ["latitude: 44°, ", "site.latitude"],
    ["elevation: 300 m, ", "site.elevation"],
    [" ± 0.1", "reaches.0.fittings"],
    [", leave: 30 %", "stream.leave"],
    [", water temperature: 50 °F", "site.waterTemperature"],
    [" ± 20 gal/min", "stream.flow"],
    [" ± 1 ft", "fall.gross"],
    [", coefficient: 0.94", "jets.coefficient"],
    [", velocity coefficient: 0.97", "jets.velocityCoefficient"],
    ["efficiency: 70 % ± 5 %, ", "wheel.efficiency"],
    [", speed ratio: 0.46", "wheel.speedRatio"],
    ["machine: { efficiency: 80 % ± 5 % }", "machine.efficiency"],
    [", size: 2/0 AWG", "cable.size"],
    [", metal: copper", "cable.metal"],
    [", temperature: 86 °F", "cable.temperature"],
    [", charging: 54.5 V", "bank.charging"],
    ["margin: 50 %, ", "divert.margin"],
    ["volts: 56 V, ", "divert.volts"],
    ["element: { power: 2000 W, volts: 120 V }, ", "divert.element"],
  ])("is listed where it is left out: %s", (left, path) => {
    expect(whole).toContain(left);
    const { design } = designed(whole.replace(left, ""));
    // What no survey can give yet is assumed of each.
    const always = designed(whole).design.assumed.map((one) => one.path.join("."));
    expect(always).toEqual(["machine.openCircuit", "divert.tank.heating"]);
    const listed = design.assumed.map((one) => one.path.join("."));
    expect(listed.filter((one) => !always.includes(one))).toEqual([path]);
    expect(design.assumed.every(({ what, value }) => what !== "" && value !== "")).toBe(true);
  });
});

describe("a reading without ±", () => {
  const notch = (more: string): string =>
    `{ notch: { shape: V, angle: 90°, head: 7 1/2 in, sill: 20 in, channel: 6 ft${more} } }`;
  const withNotch = (more: string): Designed =>
    designed(customary.replace("{ flow: 400 gal/min ± 20 gal/min, leave: 30 % }", notch(more)));
  const listed = ({ design }: Designed, what: string): boolean =>
    design.assumed.some((one) => one.what === what);

  /** By hand: the flow of a V goes with h + kh to the power 5/2, kh being 0.0029 ft at a right angle. */
  const ofHead = (made: Designed): number =>
    (contribution(made, "stream.flow", "stream.notch.head") * (7.5 * 0.0254 + 0.0029 * 0.3048)) /
    (2.5 * parameter(made, "stream.flow").value);

  it("of a ruler that is named counts half its division, as a rectangle", () => {
    const made = withNotch(", read to: 1/8 in");
    expect(ofHead(made) / ((0.125 * 0.0254) / 2 / Math.sqrt(3))).toBeCloseTo(1, 3);
    expect(listed(made, "division of the instrument: head over the notch")).toBe(false);
  });

  it("of a ruler that is not named counts the digits written, and that is listed", () => {
    const made = withNotch("");
    expect(ofHead(made) / ((0.5 * 0.0254) / 2 / Math.sqrt(3))).toBeCloseTo(1, 3);
    expect(listed(made, "division of the instrument: head over the notch")).toBe(true);
  });

  it.each(["psi", "psig"])("of a gauge in %s counts its division and its class", (unit) => {
    const made = designed(
      customary.replace("{ gross: 100 ft ± 1 ft }", `{ gauge: 43 ${unit}, read to: 0.5 psi }`),
    );
    const byHand = Math.hypot(0.5 / 2 / Math.sqrt(3), (0.02 * 43) / 1.96) * 6894.757;
    const weight = made.numbers.density * 9.80665;
    expect((contribution(made, "fall.gross", "fall.gauge") * weight) / byHand).toBeCloseTo(1, 4);
    expect(listed(made, "spread of the gauge reading at the bottom")).toBe(true);
  });
});

describe("a draw that nothing physical could have", () => {
  it("is left out, and that is told", () => {
    const wild = designed(customary.replace("70 % ± 5 %", "90 % ± 30 %")).design;
    const note = wild.notices.find(({ code }) => code === "draws-refused");
    expect(note?.message).toMatch(
      /^\d+ of 2000 draws of the uncertain numbers gave what no scheme/u,
    );
    const tame = designed(customary).design;
    expect(tame.notices.some(({ code }) => code === "draws-refused")).toBe(false);
  });
});

describe("the gauge before the nozzles", () => {
  it("reads the net head less the velocity head while the water runs", () => {
    const { design, numbers } = designed(customary);
    const { density, netHead, reaches } = numbers;
    const velocity = reaches.at(-1)!.velocity;
    const byHand = density * (9.80665 * netHead - velocity ** 2 / 2);
    expect(design.fall.runningPressure["~si"] / byHand).toBeCloseTo(1, 12);
  });
});
