import type { Notice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import { type NoticeOptions, requireKind, requireSign, tell } from "../refusal.ts";
import { froudeSubmergence } from "./froude-submergence.ts";
import { gordonSubmergence } from "./gordon-submergence.ts";

/** A pipe's mouth under water. */
export interface MouthSubmergenceInput {
  /** Most that flows into the pipe. */
  readonly flow: Quantity<"volume flow">;
  /** Inside diameter of the mouth, where it is a bell larger than the bore. */
  readonly mouthDiameter: Quantity<"length">;
  /** How the water comes to the mouth. */
  readonly approach: "symmetrical" | "lateral";
  /** Lowest water level over the top of the mouth, behind the screen with leaves on it. */
  readonly depthOverMouth?: Quantity<"length"> | undefined;
  /** Gravity at the site; standard where it is left out. */
  readonly gravity?: Quantity<"acceleration"> | undefined;
}

/** What a mouth needs over it. */
export interface MouthSubmergence {
  /** The deeper of the two. */
  readonly needed: Quantity<"length">;
  /** Which of the two it is. */
  readonly governing: "gordon" | "froude";
  /** By Gordon. */
  readonly gordon: Quantity<"length">;
  /** By the pump makers' standard. */
  readonly froude: Quantity<"length">;
  /** Depth that is there over what is needed, where the depth was given: below zero the mouth is too shallow. */
  readonly spare: Quantity<"length"> | undefined;
  /** That the mouth is too shallow; that it is smaller than those that Gordon looked at. */
  readonly notices: readonly Notice[];
}

const id = "mouth-submergence";

/**
 * Depth of water that a pipe's mouth needs over its top, so that it draws no air through a vortex: the deeper of
 * {@link gordonSubmergence} and {@link froudeSubmergence}.
 *
 * Air in a pipe collects at high points, throttles it and comes out of the nozzle in gusts. Swirl from a bend, a wall
 * to one side or a stream that passes needs more than either formula says: watch the surface in the first low water.
 *
 * @param input - The mouth, and the depth that is there where it is known.
 * @param options - Told of every notice.
 * @returns What is needed, by which of the two, and what is spare.
 * @throws NonPhysicalError a mouth of no size, a negative flow or depth.
 * @throws QuantityError `kind` for anything of another kind.
 * @example
 * ```ts
 * import { mouthSubmergence } from "@leat/intake";
 * import { format, litrePerSecond, millimetre } from "@leat/quantity";
 *
 * const { needed, governing, notices } = mouthSubmergence({
 *   flow: litrePerSecond.of(12),
 *   mouthDiameter: millimetre.of(150),
 *   approach: "lateral",
 *   depthOverMouth: millimetre.of(250),
 * });
 * format(needed, millimetre, 3); // => "343 mm"
 * governing; // => "froude"
 * notices.map(({ code }) => code); // => ["submergence/too-shallow", "gordon-submergence/out-of-range"]
 * ```
 */
export function mouthSubmergence(
  input: MouthSubmergenceInput,
  options: NoticeOptions = {},
): MouthSubmergence {
  const { flow, mouthDiameter, approach, depthOverMouth, gravity } = input;
  const small: Notice[] = [];
  const gordon = gordonSubmergence(
    { flow, mouthDiameter, approach },
    { onNotice: (notice) => small.push({ ...notice, severity: "note" }) },
  );
  const froude = froudeSubmergence({ flow, mouthDiameter, gravity });
  const governing = gordon.greaterThan(froude) ? "gordon" : "froude";
  const needed = governing === "gordon" ? gordon : froude;
  const shallow: Notice[] = [];
  if (depthOverMouth !== undefined) {
    requireKind(id, ["depthOverMouth"], depthOverMouth, "length");
    requireSign(id, ["depthOverMouth"], depthOverMouth, "non-negative");
    if (depthOverMouth.lessThan(needed)) {
      const formula = governing === "gordon" ? gordonSubmergence : froudeSubmergence;
      shallow.push({
        code: "submergence/too-shallow",
        severity: "caution",
        path: ["depthOverMouth"],
        message: `${id}: ${String(depthOverMouth)} of water over the mouth is less than the ${millimetres(needed)} that ${formula.definition.source.source.by} asks against vortices. Set the mouth deeper, give it a larger bell, or draw less.`,
        actual: String(depthOverMouth),
        limit: `at least ${millimetres(needed)}`,
        source: formula.definition.source,
      });
    }
  }
  return {
    needed,
    governing,
    gordon,
    froude,
    spare: depthOverMouth?.minus(needed),
    notices: tell([...shallow, ...small], options),
  };
}

function millimetres(length: Quantity<"length">): string {
  return `${(length["~si"] * 1000).toFixed(0)} mm`;
}
