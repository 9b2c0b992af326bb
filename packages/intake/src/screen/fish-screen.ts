import type { Notice } from "@leat/formula";
import { footPerSecond, format, type Quantity } from "@leat/quantity";

import { type NoticeOptions, requireKind, requireSign, tell } from "../refusal.ts";
import type { FishCriterion } from "./fish-criteria.ts";

/** A screen, and what is asked of it. */
export interface FishScreenInput {
  /** Most that is drawn. */
  readonly flow: Quantity<"volume flow">;
  /** Area that the water comes to: without frames, and without what is blocked. */
  readonly effectiveArea: Quantity<"area">;
  /** Widest opening: diameter of a hole, width of a slot or of a mesh. */
  readonly opening?: Quantity<"length"> | undefined;
  /** Area of the openings over that of the screen. */
  readonly openShare?: Quantity<"ratio"> | undefined;
  /** What the agency asks. */
  readonly criterion: FishCriterion;
}

/** How a screen stands to what is asked of it. */
export interface FishScreen {
  /** Velocity of the water square to the screen. */
  readonly approachVelocity: Quantity<"velocity">;
  /** True where everything that was given and is asked is kept. */
  readonly kept: boolean;
  /** What is not kept, what could not be checked, and that the agency decides. */
  readonly notices: readonly Notice[];
}

const id = "fish-screen";

/**
 * Holds a screen against what a fisheries agency asks.
 *
 * Nothing that this passes is a permit: the agency of the stream says what is asked there, for which fish and when.
 *
 * @param input - The screen and the criterion.
 * @param options - Told of every notice.
 * @returns The velocity before the screen, and what is not kept.
 * @throws NonPhysicalError an area of zero or less, a negative flow.
 * @throws QuantityError `kind` for anything of another kind.
 * @example
 * ```ts
 * import { fishScreen, nmfsCriterion } from "@leat/intake";
 * import { litrePerSecond, millimetre, percent, squareMetre } from "@leat/quantity";
 *
 * const { kept, notices } = fishScreen({
 *   flow: litrePerSecond.of(12),
 *   effectiveArea: squareMetre.of(0.15),
 *   opening: millimetre.of(3),
 *   openShare: percent.of(40),
 *   criterion: nmfsCriterion({ cleaning: "passive", material: "woven wire or perforated plate" }),
 * });
 * kept; // => false
 * notices.map(({ code }) => code); // => ["screen/approach-velocity", "screen/opening", "screen/agency-decides"]
 * ```
 */
export function fishScreen(input: FishScreenInput, options: NoticeOptions = {}): FishScreen {
  const { flow, effectiveArea, opening, openShare, criterion } = input;
  requireKind(id, ["flow"], flow, "volume flow");
  requireKind(id, ["effectiveArea"], effectiveArea, "area");
  requireSign(id, ["flow"], flow, "non-negative");
  requireSign(id, ["effectiveArea"], effectiveArea, "positive");
  const { source } = criterion;
  const whose = `${source.source.by} (${criterion.jurisdiction})`;
  const approachVelocity = flow.dividedBy(effectiveArea);
  const broken: Notice[] = [];
  const said: Notice[] = [];
  const tooMuch = (
    code: string,
    path: string,
    actual: string,
    limit: string,
    says: string,
  ): void => {
    const message = `${id}: ${says}`;
    broken.push({ code, severity: "caution", path: [path], message, actual, limit, source });
  };
  const unchecked = (path: string, limit: string): void => {
    const message = `${id}: ${path} is not given, and ${whose} asks ${limit}. Give it to have it checked.`;
    said.push({
      code: "screen/not-checked",
      severity: "note",
      path: [path],
      message,
      limit,
      source,
    });
  };

  if (approachVelocity.greaterThan(criterion.approachVelocity)) {
    const actual = format(approachVelocity, footPerSecond, 2);
    const asked = String(criterion.approachVelocity);
    tooMuch(
      "screen/approach-velocity",
      "effectiveArea",
      actual,
      `at most ${asked}`,
      `the water comes to the screen at ${actual}, above the ${asked} that ${whose} asks. Fish are held on it: make the screen larger.`,
    );
  }
  if (opening !== undefined) {
    requireKind(id, ["opening"], opening, "length");
    requireSign(id, ["opening"], opening, "positive");
  }
  if (criterion.opening !== undefined) {
    const limit = `at most ${String(criterion.opening)}`;
    if (opening === undefined) unchecked("opening", limit);
    else if (opening.greaterThan(criterion.opening)) {
      tooMuch(
        "screen/opening",
        "opening",
        String(opening),
        limit,
        `openings of ${String(opening)} are wider than the ${String(criterion.opening)} that ${whose} asks. Fry go through: take a finer screen.`,
      );
    }
  }
  if (openShare !== undefined) {
    requireKind(id, ["openShare"], openShare, "ratio");
    requireSign(id, ["openShare"], openShare, "positive");
  }
  if (criterion.openShare !== undefined) {
    const limit = `at least ${String(criterion.openShare)}`;
    if (openShare === undefined) unchecked("openShare", limit);
    else if (openShare.lessThan(criterion.openShare)) {
      tooMuch(
        "screen/open-share",
        "openShare",
        String(openShare),
        limit,
        `${String(openShare)} of the screen is open, less than the ${String(criterion.openShare)} that ${whose} asks. The water is fast in the openings: take a more open screen.`,
      );
    }
  }
  said.push({
    code: "screen/agency-decides",
    severity: "caution",
    path: ["criterion"],
    message: `${id}: the fisheries agency of the stream decides what is asked of a screen there. ${whose} is only one.`,
    source,
  });
  return {
    approachVelocity,
    kept: broken.length === 0,
    notices: tell([...broken, ...said], options),
  };
}
