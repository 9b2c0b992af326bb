import { type CallOptions, commonPractice, type Notice } from "@leat/formula";
import { coverage95, metre, type Quantity } from "@leat/quantity";

import { isLength, refuseIf, fault } from "../refusal.ts";
import { type Closure, type Leg, type Mark, workRun } from "./closing.ts";
import { stepSpreads } from "./level-spreads.ts";
import { standardSpread } from "./spread.ts";

/** One step down: what the plank or the hose showed. */
export interface FallStep {
  /** How much lower the next mark is; higher where negative. */
  readonly drop: Quantity<"length">;
  /** What the next mark is called. */
  readonly at?: string | undefined;
}

/** A fall taken in steps. */
export interface SteppingInput {
  /** Steps from the upper mark to the lower one. */
  readonly steps: readonly FallStep[];
  /** The same fall once more, from the upper mark to the lower one, by the same way or another. */
  readonly again?: readonly FallStep[] | undefined;
  /** Half of the 95 % interval of one step; by default as `stepSpreads` has it. */
  readonly stepSpread?: Quantity<"length"> | undefined;
  /** What the two runs may differ by; by default what so many steps scatter, at 95 %. */
  readonly closing?: Quantity<"length"> | undefined;
  /** Names the sources of uncertainty: two runs with one name are taken for one. */
  readonly name?: string | undefined;
}

/** A fall that was taken in steps, worked out. */
export interface Stepping {
  /** Height between the marks. */
  readonly head: Quantity<"gross head">;
  /** Every mark of the first run: how much lower than the upper mark. */
  readonly marks: readonly { readonly at: string; readonly drop: Quantity<"length"> }[];
  /** How far the two runs are apart, where there are two. */
  readonly closure: Closure | undefined;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

/**
 * Rod in steps without a level: a plank, a carpenter's level on it, and a rule down from its free end.
 *
 *     head = Σ(drop)
 *
 * Turn the level end for end from step to step: a bubble that is off its mark is wrong the same way each time, and
 * does not average away. One millimetre of that is counted in every step. Two runs are combined by their numbers of
 * steps, and widened to reach both where they are further apart than they should be.
 *
 * @param input - The steps.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Head, marks and how the runs agree.
 * @throws NonPhysicalError no steps, a step that is no length, a fall that is none.
 * @example
 * ```ts
 * const steps = [1.21, 0.94, 1.37].map((drop) => ({ drop: metre.of(drop) }));
 * format(plankLevelling({ steps }).head, metre, { plusMinus: true }); // => "3.520 ± 0.018 m (k = 1.96)"
 * ```
 */
export function plankLevelling(input: SteppingInput, options: CallOptions = {}): Stepping {
  return stepping("plank-levelling", "plank and spirit level", input, options);
}

/**
 * A hose full of still water in steps: each step is the height from the mark below to the water that stands level
 * with the mark above.
 *
 *     head = Σ(drop)
 *
 * A bubble in the hose takes its own height off the reading wherever the hose is steep, and nobody sees it: fill from
 * a bucket, by siphon, let it run until no air comes, and hold both ends together before each step; they must read
 * alike. Both ends are open to the air, and the water has stopped moving.
 *
 * @param input - The steps.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Head, marks and how the runs agree.
 * @throws NonPhysicalError no steps, a step that is no length, a fall that is none.
 * @example
 * ```ts
 * const steps = [4, 3.5, 5.25].map((drop) => ({ drop: foot.of(drop) }));
 * const again = [4.25, 3.25, 5.27].map((drop) => ({ drop: foot.of(drop) }));
 * const { head, closure } = hoseLevelling({ steps, again });
 * format(head, foot, { plusMinus: true }); // => "12.760 ± 0.032 ft (k = 1.96)"
 * closure?.closes; // => true
 * ```
 */
export function hoseLevelling(input: SteppingInput, options: CallOptions = {}): Stepping {
  return stepping("hose-levelling", "water-filled hose", input, options);
}

type Means = ReturnType<typeof stepSpreads.keys>[number];

function stepping(
  what: string,
  means: Means,
  { steps, again, stepSpread, closing, name = what }: SteppingInput,
  options: CallOptions,
): Stepping {
  refuseIf([...stepProblems(what, "steps", steps), ...stepProblems(what, "again", again)]);
  const spread = stepSpreads.get(means, "typical");
  const because = stepSpreads.definition.source;
  const assume = (input: string, value: string): void =>
    options.onAssumed?.({ formula: what, input, value, because });
  if (!stepSpread) assume("stepSpread", `${spread.toString()} standard`);
  const standard = stepSpread ? stepSpread["~si"] / coverage95 : spread["~si"];
  const tilted = stepSpreads.get(means, "shared")["~si"];
  const shared = metre.of(0).plusMinus(standardSpread(tilted), `${name}.bubble`);

  // The second run stands for the way back: the same heights, with the other sign.
  const legs = (way: readonly FallStep[], path: string, sign: 1 | -1): Leg[] =>
    way.map(({ drop, at }, i) => ({
      rise: drop.plus(shared).times(-sign),
      weight: 1,
      at: at ?? `step ${i + 1}`,
      path: [path, i],
    }));
  const count = steps.length + (again?.length ?? 0);
  const run = workRun({
    what,
    name,
    out: legs(steps, "steps", 1),
    back: legs(again ?? [], "again", -1),
    standard,
    allowed: closing
      ? { value: closing["~si"], of: "as given" }
      : {
          value: coverage95 * standard * Math.sqrt(count),
          of: `what ${count} steps of a ${means} scatter, at 95 %`,
          source: because,
        },
    like: (steps[0] as FallStep).drop,
  });
  const drop = run.rise.negate();
  if (!(drop["~si"] > 0)) {
    const practice = commonPractice.at("steps are taken downhill", "practice");
    refuseIf([
      fault(
        what,
        ["steps"],
        "the steps do not add up to a fall. Take them from the upper mark to the lower one, drops above zero.",
        { source: practice },
      ),
    ]);
  }
  const notices = run.notices.map((notice) => withBubble(means, notice));
  for (const notice of notices) options.onNotice?.(notice);
  return {
    head: drop.as("gross head"),
    marks: run.marks.map(({ at, rise }: Mark) => ({ at, drop: rise.negate() })),
    closure: run.closure,
    notices,
  };
}

/** Two runs of a hose that differ have air in them more often than not. */
function withBubble(means: Means, notice: Notice): Notice {
  return means === "water-filled hose" && notice.code.endsWith("/does-not-close")
    ? {
        ...notice,
        message: `${notice.message} Look for air in the hose: a bubble takes its own height off a step.`,
      }
    : notice;
}

function stepProblems(what: string, key: string, steps: readonly FallStep[] | undefined): Notice[] {
  if (steps === undefined) return [];
  if (steps.length === 0)
    return [
      fault(what, [key], `${key} is empty. Give one step or more, or leave a second run out.`),
    ];
  return steps.flatMap(({ drop }, i) =>
    isLength(drop)
      ? []
      : [
          fault(
            what,
            [key, i, "drop"],
            `${key}.${i}.drop is missing. Give how much lower the next mark is, a length.`,
          ),
        ],
  );
}
