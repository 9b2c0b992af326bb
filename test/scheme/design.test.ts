import {
  ampere,
  celsius,
  foot,
  gallonPerMinute,
  litrePerSecond,
  metre,
  poundPerSquareInch,
  Quantity,
  volt,
  watt,
} from "@leat/quantity";
import {
  type Account,
  accountNotice,
  cautions,
  type Design,
  fromPlain,
  openBy,
  toPlain,
  UnbuildableError,
} from "@leat/scheme";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { customary, designed, fiveLines, metric, saltCloud, saltSlug } from "./surveys.ts";

function accountOf({ account: { gross, losses, delivered } }: Design): Account {
  return {
    gross: gross.in(watt),
    losses: losses.map(({ name, path, power }) => ({ name, path, watts: power.in(watt) })),
    delivered: delivered.in(watt),
  };
}

const codes = ({ notices }: Design, severity: string): string[] =>
  notices.filter((notice) => notice.severity === severity).map(({ code }) => code);

describe("a survey of five lines", () => {
  const { design } = designed(fiveLines);

  it("gives a scheme with everything else assumed and listed", () => {
    expect(design.headline).toBeDefined();
    const listed = design.assumed.map(({ path }) => path.join("."));
    for (const path of [
      "site.waterTemperature",
      "stream.leave",
      "jets.count",
      "jets.coefficient",
      "jets.velocityCoefficient",
      "wheel.efficiency",
      "machine.efficiency",
      "reaches.0.pipe",
      "reaches.0.fittings",
      "cable.size",
      "cable.metal",
      "cable.temperature",
      "bank.charging",
      "divert.margin",
      "divert.volts",
      "divert.element",
    ]) {
      expect(listed).toContain(path);
    }
  });

  it("lies where small schemes lie: W is ft × gal/min ÷ 10 to 12 (common practice, no source)", () => {
    const rule = design.fall.gross.in(foot) * design.jets.flow.in(gallonPerMinute);
    const divisor = rule / design.account.delivered.in(watt);
    expect(divisor).toBeGreaterThan(10);
    expect(divisor).toBeLessThan(13);
    // Small schemes deliver 0.4 to 0.6 of the water's power (common practice, no source).
    const share = design.account.delivered.in(watt) / design.account.gross.in(watt);
    expect(share).toBeGreaterThan(0.4);
    expect(share).toBeLessThan(0.6);
  });

  it("names the formulas that made it, with their revisions", () => {
    const ids = design.formulas.map(({ id }) => id);
    expect(ids).toEqual(expect.arrayContaining(["reach-head-loss", "machine-end", "jet-power"]));
    expect(design.formulas.every(({ revision }) => revision >= 1)).toBe(true);
  });
});

describe("a whole survey", () => {
  it("gives the same in US customary and in metric units", () => {
    const [us, si] = [designed(customary).design, designed(metric).design];
    const ratio = us.account.delivered.in(watt) / si.account.delivered.in(watt);
    expect(ratio).toBeCloseTo(1, 9);
    expect(us.headline!.half.in(watt) / si.headline!.half.in(watt)).toBeCloseTo(1, 3);
    expect(us.narrow.map(({ key }) => key)).toEqual(si.narrow.map(({ key }) => key));
    expect(us.divert.elements).toBe(si.divert.elements);
  });

  it("passes through the nozzles just the flow that the head left over drives", () => {
    const { design } = designed(customary);
    // By hand: Q = Cd · Σ(π/4 · d²) · √(2·g·H), at the printed net head.
    const area = 2 * (Math.PI / 4) * (0.6 * 0.0254) ** 2;
    const byHand = 0.94 * area * Math.sqrt(2 * 9.80665 * design.fall.net.in(metre));
    expect(design.jets.flow.in(litrePerSecond)).toBeCloseTo(byHand * 1000, 9);
    expect(design.jets.convergence!.iterations).toBeLessThan(60);
    expect(Math.abs(design.jets.convergence!.residual)).toBeLessThan(1e-12);
    expect(design.fall.net.plus(design.fall.loss).in(metre)).toBeCloseTo(30.48, 12);
  });

  it("turns a pressure given as the fall into head with the water's density, and says so", () => {
    const { design } = designed(fiveLines.replace("110 ft", "50 psi"));
    // 50 psi is 115.4 ft of water at 10 °C; 110 ft is 47.7 psi.
    expect(design.fall.gross.in(foot)).toBeCloseTo(115.4, 1);
    expect(design.assumed.map(({ what }) => what)).toContain("a pressure given as the fall");
    const level = designed(fiveLines).design;
    expect(level.fall.staticPressure.in(poundPerSquareInch)).toBeCloseTo(47.7, 1);
  });

  it("works the cable out as Ohm's law does", () => {
    const { design } = designed(customary);
    const { current, machineVolts, drop, loop } = design.cable;
    expect(machineVolts.in(volt)).toBeCloseTo(54.5 + drop.in(volt), 9);
    expect(drop.in(volt)).toBeCloseTo(current.in(ampere) * loop["~si"], 9);
    expect(current.in(ampere) * 54.5).toBeCloseTo(design.account.delivered.in(watt), 6);
  });

  it("shows both Francis forms beside a rectangular notch and says why they differ", () => {
    const { design } = designed(
      fiveLines.replace(
        "stream: 400 gal/min",
        "stream: { notch: { shape: rectangular, width: 16 in, head: 3 1/2 in, read to: 1/8 in } }",
      ),
    );
    const note = design.notices.find(({ code }) => code === "notch-forms");
    expect(note?.message).toContain("314 gal/min");
    expect(note?.message).toContain("300 gal/min");
  });
});

describe("the power account", () => {
  const { design } = designed(customary);

  it("closes to rounding", () => {
    expect(accountNotice(accountOf(design))).toBeUndefined();
  });

  const names = design.account.losses.map(({ name }) => name);
  it.each(names)("turns red where 1 %% is planted in %s", (name) => {
    const account = accountOf(design);
    const losses = account.losses.map((loss) =>
      loss.name === name ? { ...loss, watts: loss.watts * 1.01 } : loss,
    );
    expect(accountNotice({ ...account, losses })?.code).toBe("account-open");
    expect(accountNotice({ ...account, losses })?.severity).toBe("stop");
  });
});

describe("the spread of the watts", () => {
  it("is narrowed by a measurement as much as was promised", () => {
    const { design } = designed(customary);
    expect(design.narrow).toHaveLength(3);
    const [first] = design.narrow;
    const key =
      first!.key === "wheel.efficiency"
        ? "wheel: { efficiency: 70 %"
        : "machine: { efficiency: 80 %";
    const sharper = designed(customary.replace(`${key} ± 5 %`, `${key} ± 0.001 %`)).design;
    expect(sharper.headline!.half.in(watt)).toBeCloseTo(first!.half.in(watt), 1);
    expect(sharper.headline!.half.in(watt)).toBeLessThan(design.headline!.half.in(watt));
  });

  it("is what slopes by hand give", () => {
    // Watts go with both efficiencies: (5/70)² + (5/80)² alone, the rest being smaller, is a lower bound.
    const { design } = designed(customary);
    const share = design.headline!.half.in(watt) / design.headline!.watts.in(watt);
    const least = Math.hypot(5 / 70, 5 / 80);
    expect(share).toBeGreaterThan(least * 0.99);
    expect(share).toBeLessThan(least * 1.3);
  });

  it("is drawn where slopes do not tell it", () => {
    const wild = customary
      .replace("70 % ± 5 %", "70 % ± 60 %")
      .replace("80 % ± 5 %", "80 % ± 60 %");
    expect(designed(wild).design.headline!.method).toBe("drawing");
    expect(designed(customary).design.headline!.method).toBe("slopes");
  });

  it("is the same again: the draws are seeded", () => {
    expect(designed(customary).design.headline!.half.in(watt)).toBe(
      designed(customary).design.headline!.half.in(watt),
    );
  });
});

describe("a stop", () => {
  it.each([
    ["jets-beyond-stream", customary.replace("400 gal/min ± 20 gal/min", "80 gal/min")],
    ["residual-flow-taken", customary.replace("400 gal/min ± 20 gal/min", "170 gal/min")],
    ["pipe-class-exceeded", customary.replace("100 ft ± 1 ft", "600 ft")],
    [
      "ampacity-exceeded",
      customary
        .replace("48 V, charging: 54.5 V", "12 V, charging: 14 V")
        .replace("2/0 AWG", "6 AWG")
        .replace("300 ft ± 3 ft", "20 ft"),
    ],
    ["nothing-to-take", customary.replace("leave: 30 %", "leave: 400 gal/min")],
  ])("%s withholds the watts and comes first", (code, text) => {
    const { design } = designed(text);
    expect(codes(design, "stop")).toContain(code);
    expect(design.notices[0]?.severity).toBe("stop");
    expect(design.headline).toBeUndefined();
    expect(design.narrow).toEqual([]);
  });

  it("is an error of its own where the pipe cannot carry the flow", () => {
    const narrow = fiveLines.replace(
      "reaches: 900 ft",
      "reaches: { length: 900 ft, pipe: 2 in PE DR 11 }",
    );
    expect(() => designed(narrow)).toThrow(
      /^the pipe would lose .* nothing is left for the jets\./u,
    );
  });

  it("is an error of its own where no pipe can be chosen", () => {
    expect(() => designed(fiveLines.replace("110 ft", "2000 ft"))).toThrow(UnbuildableError);
  });
});

describe("cautions", () => {
  const told = (text: string): string[] => {
    const { design } = designed(text, "survey.yaml", () => saltCloud);
    return [...codes(design, "caution")];
  };

  it("have codes of their own, words and a source", () => {
    const all = cautions();
    expect(new Set(all.map(({ code }) => code)).size).toBe(all.length);
    expect(all.every(({ text, source }) => text.length > 40 && source.place !== "")).toBe(true);
  });

  it("are every one given to some scheme", () => {
    const given = new Set([
      ...told(fiveLines),
      ...told(fiveLines.replace("48 V", "60 V")),
      ...told(customary.replace("volts: 120 V", "volts: 48 V")),
      ...told(customary),
      ...told(
        fiveLines.replace(
          "400 gal/min",
          "{ notch: { shape: V, angle: 90°, head: 7 in, sill: 20 in, channel: 6 ft } }",
        ),
      ),
      ...told(fiveLines.replace("400 gal/min", saltSlug)),
    ]);
    expect(
      cautions()
        .map(({ code }) => code)
        .filter((code) => !given.has(code)),
    ).toEqual([]);
  });

  it.each([
    ["impounding", fiveLines],
    ["hot-water", fiveLines],
    ["residual-flow-unset", customary],
    ["element-over-volts", customary],
    ["above-extra-low-voltage", fiveLines.replace("48 V", "12 V")],
    ["second-path-missing", customary],
    ["bank-lithium", customary],
    ["bank-hydrogen", customary.replace("flooded lead-acid", "lithium iron phosphate")],
    ["joining-and-pulling", customary.replace("4 in PE DR 11", "4 in PVC Sch 40")],
    [
      "touch-volts",
      customary
        .replace("48 V, charging: 54.5 V", "6 V, charging: 7 V")
        .replace("300 ft ± 3 ft", "2 ft"),
    ],
  ])("%s is not given where it does not apply", (code, text) => {
    expect(told(text)).not.toContain(code);
  });
});

describe("a design as plain data", () => {
  it("comes back from JSON and from a structured clone as it went, uncertainty included", () => {
    const { design } = designed(customary);
    for (const plain of [
      JSON.parse(JSON.stringify(toPlain(design))),
      structuredClone(toPlain(design)),
    ]) {
      const back = fromPlain(plain) as Design;
      expect(back.headline!.watts).toBeInstanceOf(Quantity);
      expect(back.headline!.watts.minus(design.headline!.watts).sources().size).toBe(0);
      expect(toPlain(back)).toEqual(toPlain(design));
    }
  });

  it("is refused in another version", () => {
    expect(() => fromPlain({ leat: 2, is: "design" })).toThrow(
      "this is not a result of version 1 (design, measurements, stream): leat = 2, is = design. It may come from a later version.",
    );
  });
});

describe("200 generated surveys", () => {
  const number = (min: number, max: number): fc.Arbitrary<string> =>
    fc.double({ min, max, noNaN: true }).map((n) => n.toPrecision(4));
  const length = (min: number, max: number): fc.Arbitrary<string> =>
    fc.oneof(
      number(min, max).map((n) => `${Number(n)} m`),
      number(min / 0.3048, max / 0.3048).map((n) => `${Number(n)} ft`),
    );
  const flow = fc.oneof(
    number(2, 60).map((n) => `flow: ${Number(n)} L/s`),
    number(40, 900).map((n) => `flow: ${Number(n)} gal/min ± 5 gal/min`),
    number(3, 12).map(
      (n) =>
        `notch: { shape: rectangular, width: 16 in, head: ${Number(n)} in, sill: 20 in, channel: 6 ft }`,
    ),
    number(80, 300).map(
      (n) =>
        `notch: { shape: V, angle: 90°, head: ${Number(n)} mm, sill: 800 mm, channel: 2 m, read to: 1 mm }`,
    ),
    number(2, 9).map(
      (n) => `bucket: [{ volume: 60 L, time: ${n} s }, { volume: 60 L, time: ${n} s }]`,
    ),
  );
  const fall = fc.oneof(
    length(5, 80).map((h) => `gross: ${h}`),
    number(8, 110).map((p) => `gauge: ${Number(p)} psig`),
  );
  const pipes = fc.constantFrom(
    "4 in PE DR 11",
    "6 in PE DR 11",
    "160 mm PE100 SDR 11",
    "4 in PVC Sch 40",
  );
  const survey = fc
    .record({
      flow,
      leave: fc.option(number(1, 80).map((n) => `leave: ${Number(n)} %`)),
      fall,
      reaches: fc.array(fc.tuple(length(20, 500), fc.option(pipes)), {
        minLength: 1,
        maxLength: 2,
      }),
      nozzles: fc.option(fc.array(number(6, 25), { minLength: 1, maxLength: 4 })),
      cable: length(10, 300),
      size: fc.option(fc.constantFrom("2 AWG", "4/0 AWG", "35 mm²", "95 mm²")),
      metal: fc.option(fc.constantFrom("copper", "aluminium")),
      volts: fc.constantFrom("12 V", "24 V", "48 V"),
    })
    .map(({ flow: q, leave, fall: h, reaches, nozzles, cable, size, metal, volts }) =>
      [
        `stream: { ${[q, leave].filter(Boolean).join(", ")} }`,
        `fall: { ${h} }`,
        "reaches:",
        ...reaches.map(([l, pipe]) => `  - { length: ${l}${pipe ? `, pipe: ${pipe}` : ""} }`),
        ...(nozzles
          ? [`jets: { nozzles: [${nozzles.map((d) => `${Number(d)} mm`).join(", ")}] }`]
          : []),
        `cable: { length: ${[cable, size && `size: ${size}`, metal && `metal: ${metal}`].filter(Boolean).join(", ")} }`,
        `bank: { volts: ${volts} }`,
      ].join("\n"),
    );

  /** The scheme, or nothing where the reason is told that there can be none. */
  const schemeOrReason = (text: string): ReturnType<typeof designed> | undefined => {
    try {
      return designed(text);
    } catch (error) {
      if (!(error instanceof UnbuildableError)) throw error;
      expect(["pipe-cannot-carry", "pipe-none-strong-enough"]).toContain(error.code);
      return undefined;
    }
  };

  it("give a scheme whose account closes, or a reason", () => {
    fc.assert(
      fc.property(survey, (text) => {
        const made = schemeOrReason(text);
        if (!made) return;
        const { design, numbers } = made;
        const account = accountOf(design);
        expect(Object.values(account.losses).every(({ watts }) => Number.isFinite(watts))).toBe(
          true,
        );
        expect(Math.abs(openBy(account))).toBeLessThanOrEqual(1e-9 * account.gross);
        expect(account.losses.every(({ watts }) => watts >= 0)).toBe(true);
        expect(numbers.delivered).toBeLessThanOrEqual(numbers.machine);
        expect(numbers.machine).toBeLessThanOrEqual(numbers.shaft);
        expect(numbers.shaft).toBeLessThanOrEqual(numbers.jets);
        expect(numbers.jets).toBeLessThanOrEqual(numbers.gross);
        expect(numbers.netHead).toBeLessThan(numbers.grossHead);
        const stopped = design.notices.some(({ severity }) => severity === "stop");
        expect(design.headline === undefined).toBe(stopped);
        if (design.headline) expect(design.headline.half.in(watt)).toBeGreaterThan(0);
      }),
      { numRuns: 200, seed: 20 },
    );
  }, 60_000);

  it("give more watts for more fall, where pipe, nozzles and cable are the same", () => {
    fc.assert(
      fc.property(fc.double({ min: 10, max: 60, noNaN: true }), (h) => {
        const at = (head: number): number =>
          designed(
            customary
              .replace("100 ft ± 1 ft", `${head.toFixed(3)} m`)
              .replace("400 gal/min ± 20 gal/min", "60 L/s"),
          ).numbers.delivered;
        expect(at(h * 1.05)).toBeGreaterThan(at(h));
      }),
      { numRuns: 20, seed: 21 },
    );
  });

  it("are cold or warm: the temperature of the water moves friction, and is a point", () => {
    const cold = designed(customary.replace("50 °F", "1 °C")).numbers;
    const warm = designed(customary.replace("50 °F", "25 °C")).numbers;
    expect(cold.viscosity).toBeGreaterThan(warm.viscosity);
    expect(cold.netHead).toBeLessThan(warm.netHead);
    expect(celsius.at(1).lessThan(celsius.at(25))).toBe(true);
  });
});
