import { bound, firstPrinciples, formula, input, output, range } from "@leat/formula";
import { NumericsError } from "@leat/numerics";
import { degree, radian } from "@leat/quantity";

import { blockedShareInput } from "../blocked-share-input.ts";
import { gravityInput } from "../gravity-input.ts";
import { wahlScreens } from "../sources.ts";
import { pitchOf, slotFlowOf, type TiltedWires } from "./tilted-wire-slot-of.ts";

/** Steps that are never needed: each more than halves what is left. */
const mostSteps = 100; // guard: a cap that is never reached

/**
 * Velocity of a sheet of water that runs faster than critical, from its energy: the greater root of
 * V³ − 2·g·E·V + 2·g·q·cos θ = 0. Newton's steps from √(2·g·E) come down to it and never pass it.
 */
function sheetVelocity(flow: number, energy: number, cosine: number, gravity: number): number {
  const twice = 2 * gravity * energy;
  let velocity = Math.sqrt(twice);
  // guard: counts steps
  for (let step = 0; step < mostSteps; step += 1) {
    const slope = 3 * velocity * velocity - twice; // guard: the slope of a step, on which the root does not depend
    const next =
      velocity -
      (velocity * velocity * velocity - twice * velocity + 2 * gravity * flow * cosine) / slope;
    if (!(slope > 0 && next > 0)) break;
    if (next >= velocity) return velocity;
    velocity = next;
  }
  throw new NumericsError(
    "not-converged",
    `tilted-wire-screen: water with ${energy} m of energy cannot pass ${flow} m² a second over the screen. Give it more fall before the screen, or a wider one.`,
    { flow, energy },
  );
}

/** What a screen does with a sheet of water, over its width. */
interface Run {
  readonly taken: number;
  readonly wetted: number;
}

/** Goes down the screen slot by slot. */
function runDown(
  wires: TiltedWires,
  sheet: { flow: number; energy: number; length: number; incline: number },
  coefficient: number,
  gravity: number,
): Run {
  const { flow, energy, length, incline } = sheet;
  const pitch = pitchOf(wires);
  const cosine = Math.cos(incline);
  const sine = Math.sin(incline);
  const slots = Math.floor(length / pitch);
  let left = flow;
  for (let i = 0; i < slots; i += 1) {
    const here = energy + (i + 1) * pitch * sine;
    const velocity = sheetVelocity(left, here, cosine, gravity);
    const depth = left / velocity;
    const froude = velocity / Math.sqrt(gravity * depth * cosine);
    const take = slotFlowOf(wires, coefficient, here, froude, gravity);
    // The last slot has room for more than is left.
    if (take >= left) return { taken: flow, wetted: (i + left / take) * pitch };
    left -= take;
  }
  return { taken: flow - left, wetted: length };
}

interface Letters {
  readonly Q: number;
  readonly W: number;
  readonly H: number;
  readonly θ: number;
  readonly g: number;
  readonly rad: number;
}

/** Energy at the upper edge over that of critical flow, cubed. */
function overCritical({ Q, W, H, θ, g, rad }: Letters): number {
  const unitFlow = (Q * Math.cos(θ / rad)) / W;
  return (H * H * H * g) / (unitFlow * unitFlow);
}

/**
 * What a plane screen of tilted wedge wire under a crest takes of the flow that runs down it, and over what length.
 *
 *     from slot to slot, i = 1 … L/(s + w), with q the flow over the width that is left, Σ what the slots take
 *     E = H + i·(s + w)·sin(θ)      V³ − 2·g·E·V + 2·g·q·cos(θ) = 0      d = q/V      Fr = V/√(g·d·cos(θ))
 *     each slot takes (1 − b) · C · √(2·g·E) · (y·Fr + x·√2)/√(Fr² + 2), as in {@link tiltedWireSlot}
 *
 * The sheet gains energy as it runs down and loses none to friction, as in the published model of such screens. A
 * share b of every slot is shut by what lies in it. Where the screen takes all of the flow, `wettedLength` is what it
 * needs; where some passes over its lower edge, it is the whole length. A curved screen presses the water on and
 * takes more.
 *
 * @throws NonPhysicalError no slot, no fall, a negative flow, a share above 1.
 * @throws OutOfValidityError water slower than critical at the upper edge, and `onNotice` is absent.
 * @throws NumericsError `not-converged` for such water where a notice was accepted.
 * @example
 * ```ts
 * import { tiltedWireScreen } from "@leat/intake";
 * import { coherentUnit, degree, format, litrePerSecond, metre, millimetre, one } from "@leat/quantity";
 *
 * const screen = {
 *   flow: litrePerSecond.of(40),
 *   width: metre.of(0.6),
 *   fall: metre.of(0.25),
 *   incline: degree.of(45),
 *   screenLength: metre.of(0.5),
 *   slot: millimetre.of(1),
 *   wire: millimetre.of(1.5),
 *   wireTilt: degree.of(5),
 *   slotCoefficient: coherentUnit("coefficient").of(0.6),
 * };
 * const clean = tiltedWireScreen(screen);
 * format(clean.taken, litrePerSecond, 3); // => "40.0 L/s"
 * format(clean.wettedLength, metre, 2); // => "0.38 m"
 * const leafy = tiltedWireScreen({ ...screen, blockedShare: one.of(0.75) });
 * format(leafy.passedOver, litrePerSecond, 2); // => "24 L/s"
 * ```
 */
export const tiltedWireScreen = /* @__PURE__ */ formula(() => ({
  id: "tilted-wire-screen",
  equation:
    "taken = W · Σ (1 - b)·C·√(2·g·E)·(y·Fr + x·√2)/√(Fr² + 2) over the slots that are wet; E = H + i·(s + w)·sin(θ)",
  inputs: {
    /** Flow over the crest and onto the screen. */
    flow: input("volume flow", "Q", { domain: "positive" }),
    /** Width of the screen, along the wires. */
    width: input("length", "W", { domain: "positive" }),
    /** The water's energy line over the upper edge of the screen: the head on the crest and the drop to the screen. */
    fall: input("length", "H", { domain: "positive" }),
    /** Slope of the screen below the horizontal. */
    incline: input("angle", "θ", { domain: "positive" }),
    /** Length of the screen down its slope. */
    screenLength: input("length", "L", { domain: "positive" }),
    /** Clear slot along the screen, before the wires are tilted. */
    slot: input("length", "s", { domain: "positive" }),
    /** Width of the face of a wire. */
    wire: input("length", "w", { domain: "positive" }),
    /** How far the face of a wire is turned out of the screen, its leading edge up. */
    wireTilt: input("angle", "φ"),
    /** Discharge coefficient of a slot. */
    slotCoefficient: input("coefficient", "C", { domain: "positive" }),
    /** Share of every slot that is shut. */
    blockedShare: blockedShareInput(),
    /** Gravity at the site. */
    gravity: gravityInput(),
  },
  output: {
    /** What goes through the screen. */
    taken: output("volume flow", "taken"),
    /** What runs over its lower edge, back to the stream. */
    passedOver: output("volume flow", "over"),
    /** Length of the screen that the water needs; all of it where some runs over. */
    wettedLength: output("length", "Lw"),
  },
  constants: { rad: radian.of(1) },
  limits: [
    range("wireTilt", { max: degree.of(10) }, wahlScreens.at("wires tested", "memory")),
    range("incline", { max: degree.of(85) }, firstPrinciples.at("water that lies on the screen")),
    bound(
      "fall",
      "energy at the upper edge over that of critical flow, cubed",
      (letters: Letters) => overCritical(letters),
      { min: 3.375 },
      firstPrinciples.at("critical flow, E = 3/2 of its depth"),
    ),
  ],
  source: wahlScreens.at("model of a whole screen, abstract of 2001"),
  body: ({ Q, W, H, θ, L, s, w, φ, C, b, g, rad }) => {
    const { taken, wetted } = runDown(
      { slot: s, wire: w, tilt: φ / rad },
      { flow: Q / W, energy: H, length: L, incline: θ / rad },
      C * (1 - b),
      g,
    );
    return { taken: taken * W, over: Q - taken * W, Lw: wetted };
  },
}));
