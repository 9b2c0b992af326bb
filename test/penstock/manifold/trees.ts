import { bracketedRoot } from "@leat/numerics";
import {
  frictionHeadOf,
  type PlainManifold,
  pipeVelocityOf,
  velocityHeadsOf,
} from "@leat/penstock";
import fc from "fast-check";

/** Head of a nozzle at a flow. */
function nozzleHead({ jets, gravity }: PlainManifold, j: number, flow: number): number {
  const { diameter, dischargeCoefficient } = jets[j]!;
  return velocityHeadsOf(1, pipeVelocityOf(flow, diameter) / dischargeCoefficient, gravity);
}

/**
 * Another solver, slow and without a tangent: what a pipe and all below it pass at a head is found inside a bracket, and inside of that
 * what hangs on it.
 *
 * @param manifold - The penstock.
 * @param open - Jets that are open.
 * @returns Flow of every jet; below the height of a jet nothing flows.
 */
export function bracketed(manifold: PlainManifold, open: readonly number[]): number[] {
  const { pipes, jets, fall, gravity, viscosity } = manifold;
  const flows = jets.map(() => 0);
  const below = pipes.map((_, i) => pipes.flatMap(({ above }, k) => (above === i ? [k] : [])));
  const loss = (i: number, flow: number): number => {
    const { bore, roughness, length, coefficient } = pipes[i]!;
    return (
      frictionHeadOf(flow, bore, roughness, length, viscosity, gravity) +
      velocityHeadsOf(coefficient, pipeVelocityOf(flow, bore), gravity)
    );
  };
  /** What pipe i and all below it pass with this head at its upper end. */
  const passed = (i: number, head: number): number => {
    const j = jets.findIndex(({ pipe }) => pipe === i);
    const rest = (flow: number): number => head - loss(i, flow);
    const over =
      j >= 0
        ? (flow: number): number => rest(flow) - jets[j]!.height - nozzleHead(manifold, j, flow)
        : (flow: number): number =>
            below[i]!.reduce((sum, k) => sum + passed(k, rest(flow)), 0) - flow;
    if (j >= 0 && !open.includes(j)) return 0;
    if (!(over(0) > 0)) return 0;
    let high = 1e-6;
    while (over(high) > 0) high *= 4;
    const flow = bracketedRoot(over, 0, high, { xTolerance: 1e-15 * high }).root;
    if (j >= 0) flows[j] = flow;
    return flow;
  };
  // The last look at each pipe is the one with the head that it has.
  const settle = (i: number, head: number): void => {
    const flow = passed(i, head);
    for (const k of below[i]!) settle(k, head - loss(i, flow));
  };
  pipes.forEach(({ above }, i) => above < 0 && settle(i, fall));
  return flows;
}

const between = (min: number, max: number): fc.Arbitrary<number> =>
  fc.double({ min: Math.log(min), max: Math.log(max), noNaN: true }).map(Math.exp);

/** A length of pipe that belongs to a small scheme. */
const pipe = (
  bore: fc.Arbitrary<number>,
  length: fc.Arbitrary<number>,
): fc.Arbitrary<Omit<PlainManifold["pipes"][number], "above">> =>
  fc.record({ bore, roughness: between(1e-6, 2e-4), length, coefficient: between(0.1, 6) });

/** Penstocks of one to four reaches and one to five jets, some on a second tee. */
export const penstocks: fc.Arbitrary<PlainManifold> = fc
  .record({
    fall: between(4, 250),
    viscosity: between(8e-7, 1.8e-6),
    reaches: fc.array(pipe(between(0.06, 0.3), between(5, 600)), { minLength: 1, maxLength: 4 }),
    hoses: fc.array(
      fc.record({
        hose: pipe(between(0.02, 0.08), fc.oneof(fc.constant(0), between(0.3, 6))),
        nozzle: fc.double({ min: 0.1, max: 1, noNaN: true }),
        dischargeCoefficient: fc.double({ min: 0.6, max: 1, noNaN: true }),
        height: fc.double({ min: 0, max: 1, noNaN: true }),
      }),
      { minLength: 1, maxLength: 5 },
    ),
    header: fc.option(pipe(between(0.04, 0.1), between(0.3, 3))),
  })
  .map(({ fall, viscosity, reaches, hoses, header }) => {
    const pipes: PlainManifold["pipes"][number][] = reaches.map((reach, i) => ({
      ...reach,
      above: i - 1,
    }));
    let above = pipes.length - 1;
    const jets = hoses.map(({ hose, nozzle, ...jet }, j) => {
      // The last two hang on a header of their own.
      if (header && hoses.length > 2 && j === hoses.length - 2) {
        above = pipes.push({ ...header, above }) - 1;
      }
      return { ...jet, pipe: pipes.push({ ...hose, above }) - 1, diameter: nozzle * hose.bore };
    });
    return { fall, gravity: 9.80665, viscosity, pipes, jets };
  });
