import { commonPractice, type Notice } from "@leat/formula";
import { celsius, pascal, type Point, type Quantity } from "@leat/quantity";

import { nmfsPumpIntake } from "../sources.ts";

/** What is known of an intake; what is not known is taken as if it were there. */
export interface IntakeFacts {
  /** Pressure from outside at which the pipe below is pressed flat. */
  readonly collapsePressure?: Quantity<"pressure"> | undefined;
  /** Coldest air of a year. */
  readonly coldest?: Point<"absolute zero"> | undefined;
  /** Whether a pond stands behind a crest. */
  readonly impounds?: boolean | undefined;
  /** Whether there are no fish in the stream, by the word of its agency. */
  readonly noFish?: boolean | undefined;
}

/** A caution: when it is given, and what it says. */
interface Caution {
  readonly code: string;
  readonly path: Notice["path"];
  readonly when: (facts: IntakeFacts) => boolean;
  readonly text: string;
  readonly source: Notice["source"];
}

/** An atmosphere: a pipe that bears more is not pressed flat by emptying. */
const atmosphere = 101_325;

/** Every caution of this package. */
function cautions(): readonly Caution[] {
  const practice = commonPractice.at("work at intakes", "practice");
  return [
    {
      code: "intake/entrapment",
      path: [],
      when: () => true,
      text: "A running intake holds a hand, a sleeve, hair or a child against its screen or its mouth and does not let go. Shut the flow before reaching in, keep people and animals from it, and never leave a mouth without a screen.",
      source: practice,
    },
    {
      code: "intake/working-in-water",
      path: [],
      when: () => true,
      text: "Screens are cleaned in cold, fast water on slippery stones, mostly in floods. Give a place to stand and something to hold, and do not go alone.",
      source: practice,
    },
    {
      code: "intake/fish",
      path: ["noFish"],
      when: ({ noFish }) => noFish !== true,
      text: "Fish and fry are drawn onto a screen or through it. The fisheries agency of the stream sets openings and velocity; it may also close the stream to work for a season.",
      source: nmfsPumpIntake.at("pump intake screen flow criteria"),
    },
    {
      code: "intake/vacuum-collapse",
      path: ["collapsePressure"],
      when: ({ collapsePressure }) =>
        collapsePressure === undefined || collapsePressure.lessThan(pascal.of(atmosphere)),
      text: "A pipe that runs empty below a shut or blocked intake is sucked flat, and its water hammers as it parts. Let air in just below the intake through a vent that nothing can shut: no valve in it, above flood and snow, and clear of ice.",
      source: practice,
    },
    {
      code: "intake/ice",
      path: ["coldest"],
      when: ({ coldest }) => coldest === undefined || coldest["~si"] < celsius.at(0)["~si"],
      text: "Ice closes vents, screens and drains, and bursts pipes that stand full. Slush comes down a stream at 0 °C and shuts a screen in a night. Keep the vent warm or deep, drain what stands still, do not walk on the pond's ice, and do not thaw a plug with a flame or from its middle.",
      source: practice,
    },
    {
      code: "intake/impounding",
      path: ["impounds"],
      when: ({ impounds }) => impounds !== false,
      text: "A crest holds water back. What stands below it must be safe when it fails; impounding may need a permit and, beyond a size that differs by country, an engineer.",
      source: practice,
    },
  ];
}

/**
 * Where an intake can hurt somebody. What nothing is known of is taken as if it were there.
 *
 * They stand beside local codes and licensed practice, not in their place.
 *
 * @param facts - What is known of the intake.
 * @returns The cautions that hold.
 * @example
 * ```ts
 * import { intakeCautions } from "@leat/intake";
 * import { celsius, kilopascal } from "@leat/quantity";
 *
 * const codes = (facts: Parameters<typeof intakeCautions>[0]) =>
 *   intakeCautions(facts).map(({ code }) => code);
 * codes({ collapsePressure: kilopascal.of(30), coldest: celsius.at(4), impounds: false, noFish: true });
 * // => ["intake/entrapment", "intake/working-in-water", "intake/vacuum-collapse"]
 * ```
 */
export function intakeCautions(facts: IntakeFacts = {}): readonly Notice[] {
  return cautions()
    .filter(({ when }) => when(facts))
    .map(({ code, path, text, source }) => ({
      code,
      severity: "caution",
      path,
      message: text,
      source,
    }));
}
