import { NumericsError } from "@leat/numerics";
import {
  frictionFactorOf,
  frictionHeadOf,
  ManifoldPlan,
  type PlainManifold,
  solveManifoldPlan,
} from "@leat/penstock";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { bracketed, penstocks } from "./trees.ts";

/** A plan, solved with these jets open. */
function solved(manifold: PlainManifold, open?: readonly number[]): ManifoldPlan {
  const plan = new ManifoldPlan(manifold);
  if (open) {
    plan.open.fill(0);
    for (const j of open) plan.open[j] = 1;
  }
  solveManifoldPlan(plan);
  return plan;
}

/** Roughness over bore at which the friction factor is this whatever the flow, where the water has next to no viscosity. */
const roughFor = (f: number): number => 3.7 * 10 ** (-1 / (2 * Math.sqrt(f)));
const inviscid = 1e-14;

/** One pipe and one opening as wide as it, which takes a velocity head as an exit does. */
function openEnd(
  pipe: Omit<PlainManifold["pipes"][number], "above">,
  fall: number,
  viscosity: number,
): PlainManifold {
  return {
    fall,
    gravity: 9.80665,
    viscosity,
    pipes: [{ ...pipe, above: -1 }],
    jets: [{ pipe: 0, diameter: pipe.bore, dischargeCoefficient: 1, height: 0 }],
  };
}

const jet = (pipe: number, diameter: number, height = 0, dischargeCoefficient = 0.95) => ({
  pipe,
  diameter,
  height,
  dischargeCoefficient,
});

const fourJets: PlainManifold = {
  fall: 60,
  gravity: 9.80665,
  viscosity: 1.31e-6,
  pipes: [
    { above: -1, bore: 0.15, roughness: 3e-6, length: 250, coefficient: 0.9 },
    { above: 0, bore: 0.125, roughness: 3e-6, length: 150, coefficient: 0.5 },
    { above: 1, bore: 0.1, roughness: 4.5e-5, length: 20, coefficient: 1.2 },
    { above: 2, bore: 0.05, roughness: 1e-5, length: 1.5, coefficient: 2.2 },
    { above: 2, bore: 0.05, roughness: 1e-5, length: 2, coefficient: 2.2 },
    { above: 2, bore: 0.04, roughness: 1e-5, length: 1, coefficient: 2.5 },
    { above: 2, bore: 0.04, roughness: 1e-5, length: 2.5, coefficient: 2.5 },
  ],
  jets: [jet(3, 0.022, 0.5), jet(4, 0.02, 0.6), jet(5, 0.016, 0.5), jet(6, 0.012, 0.6)],
};

describe("solveManifoldPlan beside printed examples", () => {
  it("passes what a textbook's reservoir passes through a pipe to the air", () => {
    // Subramanya, Fluid Mechanics, ex. 11.5, as worked in a published companion: entrance 0.5, f·L/D, bends and exit, 6.300 velocity
    // heads in all, H = 10 m, D = 10 cm: 43.8 L/s. The exit is the opening's own head.
    const plan = solved(
      openEnd({ bore: 0.1, roughness: 0, length: 0, coefficient: 5.3 }, 10, 1e-6),
    );
    expect(plan.total * 1000).toBeGreaterThan(43.75);
    expect(plan.total * 1000).toBeLessThan(43.85);
  });

  it("passes what a handbook's two pipes pass", () => {
    // Crane TP-410, ex. 7-19, as quoted in a worked notebook: 11.5 ft of head, 10 ft of 3 in (3.068) and 20 ft of 2 in Schedule 40,
    // 0.0018 in rough, 62.364 lb/ft³, 1.1 cP: 137 gal/min. Coefficients of the same handbook: entrance 0.5, mitred bend 60·fT and gate
    // valve 8·fT with fT = 0.018, sudden contraction 0.5·(1 − β²) on the narrow bore.
    const [foot, inch] = [0.3048, 0.0254];
    const wide = 3.068 * inch;
    const steel = { roughness: 0.0018 * inch };
    const gallons = (narrow: number): number => {
      const plan = solved({
        fall: 11.5 * foot,
        gravity: 9.80665,
        viscosity: 1.1e-3 / ((62.364 * 0.45359237) / foot ** 3),
        pipes: [
          { ...steel, above: -1, bore: wide, length: 10 * foot, coefficient: 0.5 + 68 * 0.018 },
          {
            ...steel,
            above: 0,
            bore: narrow,
            length: 20 * foot,
            coefficient: 0.5 * (1 - (narrow / wide) ** 2),
          },
        ],
        jets: [jet(1, narrow, 0, 1)],
      });
      return plan.total / ((231 * inch ** 3) / 60);
    };
    // The book rounds the ratio of the bores to 0.67, and so its 2 in pipe to 2.056 in.
    expect(Math.abs(gallons(0.67 * wide) / 137 - 1)).toBeLessThan(0.01);
    // With the bore of Schedule 40, 2.067 in, a general library of fluid formulas (fluids 1.0.22) finds 139.21 gal/min.
    expect(Math.abs(gallons(2.067 * inch) / 139.21 - 1)).toBeLessThan(0.001);
  });

  it("passes what a siphon passes", () => {
    // Subramanya, ex. 11.17: f 0.02, 1000 m, 15 cm, 16 m of fall: V 1.534 m/s, entrance left out.
    const f = 0.02;
    const bore = 0.15;
    const plan = solved(
      openEnd({ bore, roughness: roughFor(f) * bore, length: 1000, coefficient: 0 }, 16, inviscid),
    );
    const velocity = (plan.total * 4) / (Math.PI * bore * bore);
    expect(velocity).toBeGreaterThan(1.5275);
    expect(velocity).toBeLessThan(1.5345);
  });

  it("gives the greatest power a nozzle can, and gives less with any other", () => {
    // Subramanya, ex. 11.28: 1000 m, 50 cm, f 0.019, 100 m: at most 531.6 kW, with d = D/(2·f·L/D)^(1/4) = 16.93 cm (Munson, problem
    // 12.56, prints the law), a third of the fall lost.
    const [f, bore, length, fall] = [0.019, 0.5, 1000, 100];
    const power = (diameter: number): number => {
      const plan = solved({
        fall,
        gravity: 9.81,
        viscosity: inviscid,
        pipes: [{ above: -1, bore, roughness: roughFor(f) * bore, length, coefficient: 0 }],
        jets: [jet(0, diameter, 0, 1)],
      });
      return 998 * 9.81 * plan.total * plan.netHead[0]!;
    };
    const best = bore / ((2 * f * length) / bore) ** 0.25;
    expect(best).toBeCloseTo(0.1693, 4);
    // The book's specific weight, 9.79 kN/m³.
    expect((power(best) / (998 * 9.81)) * 9790).toBeGreaterThan(531_550);
    expect((power(best) / (998 * 9.81)) * 9790).toBeLessThan(531_750);
    for (const other of [0.9, 0.97, 1.03, 1.1])
      expect(power(best * other)).toBeLessThan(power(best));
    const [lost] = solved({
      fall,
      gravity: 9.81,
      viscosity: inviscid,
      pipes: [{ above: -1, bore, roughness: roughFor(f) * bore, length, coefficient: 0 }],
      jets: [jet(0, best, 0, 1)],
    }).friction;
    expect(lost! / fall).toBeCloseTo(1 / 3, 8);
  });

  it("divides a flow as a textbook balances it by a valve", () => {
    // Subramanya, ex. 11.9: f 0.018, 150 m of 15 cm beside 100 m of 12 cm, which a valve of K = 18.62 in the first, of the notebook, or
    // what its statement balances, makes pass alike.
    const f = 0.018;
    const pipes = [
      { bore: 0.15, length: 150, coefficient: 0 },
      { bore: 0.12, length: 100, coefficient: 0 },
    ].map((pipe) => ({ ...pipe, above: -1, roughness: roughFor(f) * pipe.bore }));
    const balance = (k: number): number => {
      const [a, b] = [{ ...pipes[0]!, coefficient: k }, pipes[1]!];
      const plan = solved({
        fall: 20,
        gravity: 9.80665,
        viscosity: inviscid,
        pipes: [a, b],
        jets: [jet(0, 0.05), jet(1, 0.05)],
      });
      return plan.jetFlow[0]! / plan.jetFlow[1]!;
    };
    expect(balance(18.62)).toBeGreaterThan(0.9999);
    expect(balance(18.62)).toBeLessThan(1.0001);
  });
});

describe("solveManifoldPlan beside a solver without tangents", () => {
  it("finds the same flows, for any set of open jets", () => {
    fc.assert(
      fc.property(penstocks, fc.integer({ min: 1, max: 31 }), (manifold, mask) => {
        const open = manifold.jets.map((_, j) => j).filter((j) => (mask >> j) & 1);
        fc.pre(open.length > 0);
        const plan = solved(manifold, open);
        const other = bracketed(manifold, open);
        // Where one solver lets air in, the other's jet does not reach its height.
        if (plan.dry >= 0) {
          expect(Math.min(...open.map((j) => other[j]!))).toBe(0);
          return;
        }
        manifold.jets.forEach((_, j) => {
          expect(Math.abs(plan.jetFlow[j]! - other[j]!)).toBeLessThanOrEqual(
            1e-9 * other[j]! + 2 * plan.within,
          );
        });
      }),
      { numRuns: 300 },
    );
  });

  it("says where the answer lies: within 1e-10 of the least jet, unless its nozzle takes next to nothing of the fall", () => {
    fc.assert(
      fc.property(penstocks, (manifold) => {
        const plan = solved(manifold);
        fc.pre(plan.dry < 0);
        const least = Math.min(...plan.jetFlow);
        const takes = Math.min(...plan.netHead) / manifold.fall;
        if (takes > 1e-3) expect(plan.within).toBeLessThanOrEqual(1e-10 * least);
        expect(plan.residual).toBeLessThanOrEqual(1e-9 * manifold.fall);
        expect(plan.iterations).toBeLessThan(40);
      }),
      { numRuns: 500 },
    );
  });

  it("takes the friction of every other formula: laminar, in transition, turbulent", () => {
    const seen = new Set<string>();
    for (const viscosity of [1e-6, 4e-6, 1.2e-5, 2e-5, 3e-5, 6e-5, 1e-3]) {
      const plan = solved({
        fall: 3,
        gravity: 9.80665,
        viscosity,
        pipes: [{ above: -1, bore: 0.05, roughness: 1e-4, length: 60, coefficient: 0.5 }],
        jets: [jet(0, 0.02)],
      });
      const reynolds = plan.total * plan.reynoldsPerFlow[0]!;
      seen.add(reynolds <= 2000 ? "laminar" : reynolds < 4000 ? "in transition" : "turbulent");
      const friction = frictionHeadOf(plan.total, 0.05, 1e-4, 60, viscosity, 9.80665);
      expect(Math.abs(plan.friction[0]! / friction - 1)).toBeLessThan(1e-12);
      const rest = plan.friction[0]! + plan.fittings[0]! + plan.netHead[0]!;
      expect(Math.abs(rest / 3 - 1)).toBeLessThan(1e-12);
    }
    expect([...seen].toSorted()).toEqual(["in transition", "laminar", "turbulent"]);
  });

  it("goes on in shortened steps where Newton's would not come down, and ends at the same flows", () => {
    // Trickles through hoses whose flow is about to turn laminar: tangents jump there.
    let shortened = 0;
    fc.assert(
      fc.property(penstocks, fc.double({ min: 20, max: 400, noNaN: true }), (manifold, thick) => {
        const treacle = { ...manifold, viscosity: manifold.viscosity * thick };
        const plan = solved(treacle);
        fc.pre(plan.dry < 0);
        if (plan.shortened) shortened += 1;
        const other = bracketed(
          treacle,
          treacle.jets.map((_, j) => j),
        );
        treacle.jets.forEach((_, j) => {
          expect(Math.abs(plan.jetFlow[j]! - other[j]!)).toBeLessThanOrEqual(
            1e-9 * other[j]! + 2 * plan.within,
          );
        });
      }),
      { numRuns: 300, seed: 20 },
    );
    expect(shortened).toBeGreaterThan(0);
  });

  it("gives up with a code where a number is none", () => {
    const broken = { ...fourJets, viscosity: Number.NaN };
    expect(() => solved(broken)).toThrow(NumericsError);
    const plan = new ManifoldPlan(fourJets);
    plan.nozzle[0] = Number.NaN;
    expect(() => solveManifoldPlan(plan)).toThrow(
      "manifold: no flows were found in 200 passes; heads are off by NaN. Check that every number of the plan is one.",
    );
  });
});

describe("the flows of a penstock", () => {
  // Friction that no flow changes, so that every loss goes with a square.
  const constant = penstocks.map((manifold) => ({ ...manifold, viscosity: inviscid }));
  const level = constant.map((manifold) => ({
    ...manifold,
    jets: manifold.jets.map((each) => ({ ...each, height: 0 })),
  }));

  it("never leave another jet more head when one is opened", () => {
    fc.assert(
      fc.property(constant, fc.integer({ min: 1, max: 15 }), (manifold, mask) => {
        const n = manifold.jets.length;
        fc.pre(n > 1);
        const fewer = manifold.jets.map((_, j) => j).filter((j) => j > 0 && (mask >> (j - 1)) & 1);
        fc.pre(fewer.length > 0);
        const [a, b] = [solved(manifold, fewer), solved(manifold, [0, ...fewer])];
        fc.pre(a.dry < 0 && b.dry < 0);
        for (const j of fewer) {
          expect(b.netHead[j]!).toBeLessThanOrEqual(a.netHead[j]! * (1 + 1e-9));
          expect(b.head[manifold.jets[j]!.pipe]!).toBeLessThanOrEqual(
            a.head[manifold.jets[j]!.pipe]! + 1e-9 * manifold.fall,
          );
        }
        expect(b.total).toBeGreaterThan(a.total);
      }),
    );
  });

  it("go with the root of the fall where friction does not change", () => {
    fc.assert(
      fc.property(level, fc.double({ min: 1.5, max: 9, noNaN: true }), (manifold, times) => {
        const [a, b] = [solved(manifold), solved({ ...manifold, fall: manifold.fall * times })];
        manifold.jets.forEach((_, j) =>
          expect(b.jetFlow[j]! / a.jetFlow[j]!).toBeCloseTo(Math.sqrt(times), 8),
        );
      }),
    );
  });

  it("add up where pipes meet, and use up the fall along every path", () => {
    fc.assert(
      fc.property(penstocks, (manifold) => {
        const plan = solved(manifold);
        fc.pre(plan.dry < 0);
        const out = manifold.pipes.map(() => 0);
        manifold.pipes.forEach(({ above }, i) => above >= 0 && (out[above]! += plan.flow[i]!));
        manifold.jets.forEach(({ pipe }, j) => (out[pipe]! += plan.jetFlow[j]!));
        out.forEach((sum, i) => expect(Math.abs(sum / plan.flow[i]! - 1)).toBeLessThan(1e-12));
        manifold.jets.forEach(({ pipe, height }, j) => {
          let used = height + plan.netHead[j]!;
          for (let i = pipe; i >= 0; i = manifold.pipes[i]!.above)
            used += plan.friction[i]! + plan.fittings[i]!;
          expect(Math.abs(used / manifold.fall - 1)).toBeLessThan(1e-9);
        });
      }),
    );
  });

  it("do not depend on the order of the branches", () => {
    const order = [2, 0, 3, 1];
    const shuffled: PlainManifold = {
      ...fourJets,
      pipes: [...fourJets.pipes.slice(0, 3), ...order.map((j) => fourJets.pipes[3 + j]!)],
      jets: order.map((j, k) => ({ ...fourJets.jets[j]!, pipe: 3 + k })),
    };
    const [a, b] = [solved(fourJets), solved(shuffled)];
    order.forEach((j, k) =>
      expect(Math.abs(b.jetFlow[k]! / a.jetFlow[j]! - 1)).toBeLessThan(1e-10),
    );
  });

  it("are the same in all jets of a manifold that is the same on all sides", () => {
    fc.assert(
      fc.property(level, (manifold) => {
        const like = manifold.jets[0]!;
        const hose = manifold.pipes[like.pipe]!;
        const reaches = manifold.pipes.filter(({ above }, i) => above === i - 1 && i < like.pipe);
        const pipes = [
          ...reaches,
          ...[0, 1, 2, 3].map(() => ({ ...hose, above: reaches.length - 1 })),
        ];
        const jets = [0, 1, 2, 3].map((j) => ({ ...like, pipe: reaches.length + j }));
        const { jetFlow, total } = solved({ ...manifold, pipes, jets });
        for (const flow of jetFlow) expect(Math.abs(flow / (total / 4) - 1)).toBeLessThan(1e-12);
      }),
    );
  });

  it("are nothing, with the heads of rest, where every jet is closed", () => {
    const plan = solved(fourJets, []);
    expect([plan.total, ...plan.flow, ...plan.jetFlow]).toEqual(
      Array.from({ length: 12 }, () => 0),
    );
    expect([...plan.head]).toEqual(fourJets.pipes.map(() => 60));
    expect(plan.dry).toBe(-1);
  });

  it("name a jet that stands higher than the water comes", () => {
    const pipes = fourJets.pipes.map((pipe, i) => (i === 0 ? { ...pipe, bore: 0.06 } : pipe));
    const jets = fourJets.jets.map((each, j) => (j === 3 ? { ...each, height: 40 } : each));
    expect(solved({ ...fourJets, pipes, jets }).dry).toBe(3);
    expect(solved({ ...fourJets, pipes, jets }, [3]).dry).toBe(-1);
  });

  it("are solved afresh each time, whatever was solved before", () => {
    const plan = new ManifoldPlan(fourJets);
    solveManifoldPlan(plan);
    const first = [...plan.jetFlow];
    plan.setNozzle(1, 0.03);
    plan.setPipe(0, 0.08, 1e-4, 250, 2);
    plan.open[2] = 0;
    solveManifoldPlan(plan);
    expect(plan.jetFlow[2]).toBe(0);
    expect([plan.flow[5], plan.friction[5], plan.fittings[5]]).toEqual([0, 0, 0]);
    plan.setNozzle(1, 0.02);
    plan.setPipe(0, 0.15, 3e-6, 250, 0.9);
    plan.open[2] = 1;
    solveManifoldPlan(plan);
    expect([...plan.jetFlow]).toEqual(first);
  });

  it("take the memory of their plan and no more", () => {
    const plan = new ManifoldPlan(fourJets);
    const many = (): void => {
      for (let i = 0; i < 20_000; i++) {
        plan.setNozzle(0, 0.015 + 1e-7 * i);
        solveManifoldPlan(plan);
      }
    };
    many();
    const before = process.memoryUsage().heapUsed;
    many();
    // One number kept on the heap for each solve would be 240 kB and more.
    expect(process.memoryUsage().heapUsed - before).toBeLessThan(200_000);
  });
});

describe("colebrookExponentOf, by way of a step of the flow", () => {
  it("keeps the tangents true: four passes or five are enough for a penstock as they are built", () => {
    fc.assert(
      fc.property(penstocks, (manifold) => {
        const plan = solved(manifold);
        const turbulent = plan.flow.every((q, i) => q * plan.reynoldsPerFlow[i]! > 1e4);
        fc.pre(plan.dry < 0 && turbulent);
        expect(plan.iterations).toBeLessThan(10);
      }),
    );
    expect(frictionFactorOf(1e5, 1e-4)).toBeCloseTo(0.018514, 6);
  });
});
