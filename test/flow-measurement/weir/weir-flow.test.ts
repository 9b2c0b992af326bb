import {
  broadCrestedDischarge,
  cipollettiDischarge,
  flowWithLeakage,
  francisContractedDischarge,
  francisSuppressedDischarge,
  leakageBetween,
  likelySlip,
  rehbockDischarge,
  vNotchDischarge,
  weirFlow,
  weirRelativeUncertainty,
} from "@leat/flow-measurement";
import { type Notice, NonPhysicalError, OutOfValidityError } from "@leat/formula";
import {
  centimetre,
  degree,
  each,
  foot,
  inch,
  litrePerSecond,
  metre,
  millimetre,
  one,
  percent,
  type Quantity,
  radian,
  yard,
} from "@leat/quantity";
import * as fc from "fast-check";
import { describe, expect, it } from "vitest";

const notch = {
  notchWidth: foot.of(2),
  contractions: each.of(2),
  crestHeight: foot.of(2),
  approachWidth: foot.of(6),
};

describe("likelySlip", () => {
  const slip = (head: Quantity<"length">): string | undefined =>
    likelySlip(francisContractedDischarge, notch, head);

  it.each([
    [foot.of(5), "head = 5 ft is outside the range of this notch; 5 in would fit."],
    [inch.of(0.4), "head = 0.4 in is outside the range of this notch; 0.4 ft would fit."],
    [inch.of(120), "head = 120 in is outside the range of this notch; 120 mm would fit."],
    [metre.of(120), "head = 120 m is outside the range of this notch; 120 mm would fit."],
    [metre.of(12), "head = 12 m is outside the range of this notch; 12 cm would fit."],
    [centimetre.of(120), "head = 120 cm is outside the range of this notch; 120 mm would fit."],
    [centimetre.of(0.12), "head = 0.12 cm is outside the range of this notch; 0.12 m would fit."],
    [millimetre.of(12), "head = 12 mm is outside the range of this notch; 12 cm would fit."],
    [millimetre.of(7), "head = 7 mm is outside the range of this notch; 7 cm or 7 in would fit."],
    [millimetre.of(0.1), "head = 0.1 mm is outside the range of this notch; 0.1 m would fit."],
    [metre.of(0.06).times(200), "head = 12 m is outside the range of this notch; 12 cm would fit."],
  ])("names the unit that was meant: %#", (head, text) => {
    expect(slip(head)).toBe(text);
  });

  it("says nothing of a head inside the range, nor where no unit helps", () => {
    expect(slip(inch.of(5))).toBeUndefined();
    expect(slip(foot.of(0.001))).toBeUndefined();
    expect(slip(yard.of(5))).toBeUndefined();
    // Another unit would fit as well, but it is the width that is out of range.
    const narrow = { notchWidth: metre.of(0.2), crestHeight: metre.of(1) };
    expect(likelySlip(rehbockDischarge, narrow, millimetre.of(50))).toBeUndefined();
  });

  it("minds only what the head has a part in", () => {
    // The crest is too low for the standard at any head; the slip is in the head all the same.
    const place = { angle: degree.of(90), crestHeight: metre.of(0.08), approachWidth: metre.of(2) };
    expect(likelySlip(vNotchDischarge, place, metre.of(6.5))).toBeUndefined();
    const low = { notchWidth: metre.of(1), crestHeight: metre.of(0.09) };
    expect(likelySlip(rehbockDischarge, low, metre.of(8))).toBe(
      "head = 8 m is outside the range of this notch; 8 cm would fit.",
    );
    const sill = {
      notchWidth: metre.of(1),
      crestHeight: metre.of(0.5),
      crestLength: metre.of(0.5),
    };
    expect(likelySlip(broadCrestedDischarge, sill, metre.of(20))).toBe(
      "head = 20 m is outside the range of this notch; 20 cm would fit.",
    );
  });

  it("asks what a call asks of the notch", () => {
    expect(() =>
      likelySlip(francisContractedDischarge, { ...notch, notchWidth: foot.of(0) }, foot.of(5)),
    ).toThrow(NonPhysicalError);
  });
});

describe("weirFlow", () => {
  it("adds the equation's own uncertainty to that of the inputs", () => {
    const args = { ...notch, head: inch.of(5).within(inch.of(1 / 16), "ruler reading") };
    const flow = weirFlow(francisContractedDischarge, args);
    const bare = francisContractedDischarge(args);
    expect(flow.in(litrePerSecond)).toBe(bare.in(litrePerSecond));
    expect([...flow.sources().keys()]).toEqual([
      "ruler reading",
      "equation francis-contracted-discharge",
    ]);
    const relative = (id: string): number =>
      flow.sources().get(id)!.in(litrePerSecond) / flow.in(litrePerSecond);
    expect(relative("equation francis-contracted-discharge")).toBeCloseTo(
      0.03 / 1.959963984540054,
      12,
    );
    expect(relative("ruler reading")).toBeCloseTo((1.45 * (1 / 16 / Math.sqrt(3))) / 5, 3);
    const own = weirFlow(francisContractedDischarge, args, { equationUncertainty: percent.of(10) });
    expect(
      own.sources().get("equation francis-contracted-discharge")!.in(litrePerSecond),
    ).toBeCloseTo((0.1 / 1.959963984540054) * own.in(litrePerSecond), 12);
    const none = weirFlow(francisContractedDischarge, args, { equationUncertainty: one.of(0) });
    expect([...none.sources().keys()]).toEqual(["ruler reading"]);
  });

  it("names the likely slip in its refusal and in its notices", () => {
    const refusal = (): unknown =>
      weirFlow(francisContractedDischarge, { ...notch, head: foot.of(5) });
    expect(refusal).toThrow(OutOfValidityError);
    expect(refusal).toThrow(
      "francis-contracted-discharge: head/notchWidth = 2.5 is above 0.3333, the range USBR gives (Water Measurement Manual, ch. 7). head = 5 ft is outside the range of this notch; 5 in would fit. Pass onNotice to accept the extrapolation.",
    );
    const told: Notice[] = [];
    weirFlow(
      francisContractedDischarge,
      { ...notch, head: foot.of(5) },
      { onNotice: (notice) => told.push(notice) },
    );
    expect(told.length).toBeGreaterThan(1);
    for (const { message } of told) expect(message).toContain("; 5 in would fit.");
  });

  it("refuses as the formula does where no slip explains it", () => {
    expect(() => weirFlow(francisContractedDischarge, { ...notch, head: foot.of(0.001) })).toThrow(
      "the range USBR gives (Water Measurement Manual, ch. 7). Pass onNotice",
    );
    expect(() => weirFlow(francisContractedDischarge, { ...notch, head: foot.of(-1) })).toThrow(
      NonPhysicalError,
    );
  });
});

describe("weirRelativeUncertainty", () => {
  const heads = fc.double({ min: 0.07, max: 0.3, noNaN: true });
  const small = fc.double({ min: 0.0005, max: 0.02, noNaN: true });
  const relative = (q: Quantity<"volume flow">): number =>
    q.standardUncertainty().in(litrePerSecond) / q.in(litrePerSecond);

  it("is what a flow has by itself where the coefficient does not move with the head", () => {
    fc.assert(
      fc.property(heads, small, small, small, (h, uh, ub, uC) => {
        const flow = weirFlow(
          francisSuppressedDischarge,
          {
            head: metre.of(h).plusMinus(metre.of(uh * h), "head"),
            notchWidth: metre.of(1).plusMinus(metre.of(ub), "width"),
            crestHeight: metre.of(1),
          },
          { equationUncertainty: one.of(uC) },
        );
        const standard = weirRelativeUncertainty({
          shape: "rectangular",
          head: metre.of(h),
          headUncertainty: metre.of(uh * h),
          openingUncertainty: one.of(ub),
          coefficientUncertainty: one.of(uC),
        });
        expect((relative(flow) * 1.959963984540054) / standard.in(one)).toBeCloseTo(1, 7);
      }),
    );
  });

  it("is that of a V within 3 %, its angle through the tangent", () => {
    fc.assert(
      fc.property(heads, small, small, (h, uh, uθ) => {
        const flow = weirFlow(vNotchDischarge, {
          head: metre.of(h).plusMinus(metre.of(uh * h), "head"),
          angle: radian.of(Math.PI / 2).plusMinus(radian.of(uθ), "angle"),
          crestHeight: metre.of(1),
          approachWidth: metre.of(2),
        });
        const standard = weirRelativeUncertainty({
          shape: "V-notch",
          head: metre.of(h + 0.0029 * 0.3048),
          headUncertainty: metre.of(uh * h),
          openingUncertainty: one.of(uθ),
          coefficientUncertainty: percent.of(1),
        });
        expect(Math.abs((relative(flow) * 1.959963984540054) / standard.in(one) - 1)).toBeLessThan(
          0.03,
        );
      }),
    );
  });

  it("is within a tenth of Rehbock's, whose coefficient grows with the head", () => {
    fc.assert(
      fc.property(heads, small, (h, uh) => {
        const flow = weirFlow(rehbockDischarge, {
          head: metre.of(h).plusMinus(metre.of(uh * h), "head"),
          notchWidth: metre.of(1),
          crestHeight: metre.of(0.5),
        });
        const standard = weirRelativeUncertainty({
          shape: "rectangular",
          head: metre.of(h + 0.0012),
          headUncertainty: metre.of(uh * h),
          openingUncertainty: one.of(0),
          coefficientUncertainty: percent.of(1.5),
        });
        expect(Math.abs((relative(flow) * 1.959963984540054) / standard.in(one) - 1)).toBeLessThan(
          0.1,
        );
      }),
    );
  });
});

describe("leakage", () => {
  it("stays a source of its own in the flow of the stream", () => {
    const notchFlow = weirFlow(cipollettiDischarge, {
      head: inch.of(4),
      notchWidth: foot.of(2),
      crestHeight: foot.of(1),
      approachWidth: foot.of(5),
    });
    const leakage = leakageBetween(litrePerSecond.of(0.2), litrePerSecond.of(1));
    const stream = flowWithLeakage({ notchFlow, leakage });
    expect(stream.in(litrePerSecond)).toBeCloseTo(notchFlow.in(litrePerSecond) + 0.6, 12);
    expect([...stream.sources().keys()]).toEqual([
      "equation cipolletti-discharge",
      "leakage, judged by eye",
    ]);
    expect(stream.sources().get("leakage, judged by eye")!.in(litrePerSecond)).toBeCloseTo(
      0.4 / Math.sqrt(3),
      9,
    );
  });

  it("is named by the caller where there are two", () => {
    const left = leakageBetween(
      litrePerSecond.of(0),
      litrePerSecond.of(1),
      "leak at the left bank",
    );
    expect([...left.sources().keys()]).toEqual(["leak at the left bank"]);
    expect(left.in(litrePerSecond)).toBe(0.5);
  });

  it("cannot lie between a most and a least the wrong way round", () => {
    expect(() => leakageBetween(litrePerSecond.of(2), litrePerSecond.of(1))).toThrow("is negative");
  });
});
