import type { CallOptions, Citation, Notice } from "@leat/formula";
import {
  type AnyQuantity,
  isPoint,
  percent,
  type Point,
  poundPerSquareInch,
  type Quantity,
} from "@leat/quantity";

import { refuseIf, fault } from "../refusal.ts";
import { type GaugeAccuracy, gaugeClasses, gaugeGrades } from "./gauge-accuracy.ts";
import { hoseAndGaugeHead } from "./hose-and-gauge.ts";

/** A gauge at the foot of a full, closed pipe, as it was read. */
export interface GaugeHeadInput {
  /** What it reads with the pipe full and still. */
  readonly gauge: Point<"local atmosphere">;
  /** Full scale of the gauge, which counts from zero. */
  readonly fullScale: Quantity<"pressure">;
  /** What stands on its dial: a class such as "1.6", or a grade such as "B". */
  readonly accuracy: GaugeAccuracy;
  /** What it shows open to the air; it is taken off the reading. */
  readonly zero?: Quantity<"pressure"> | undefined;
  /** Smallest division of the dial: it is read to half of it. */
  readonly division?: Quantity<"pressure"> | undefined;
  /** Height of the gauge above the jet; negative where it is below. */
  readonly gaugeAboveJet: Quantity<"length">;
  /** Density of the water, at its temperature; that of 10 °C by default. */
  readonly density?: Quantity<"density"> | undefined;
  /** Gravity at the site; standard by default. */
  readonly gravity?: Quantity<"acceleration"> | undefined;
  /** Names the sources of uncertainty: readings of one gauge share it. `gauge` by default. */
  readonly name?: string | undefined;
}

/** What a gauge says of the head. */
export interface GaugeHead {
  /** Intake water level above the jet. */
  readonly head: Quantity<"gross head">;
  /** What the gauge may be wrong by at this reading. */
  readonly limit: Quantity<"pressure">;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}

const what = "gauge-head";

/**
 * Gross head from a gauge at the foot of a full, still pipe or hose, with what the gauge may be wrong by.
 *
 * The reading, less what the gauge shows at no pressure, goes through `hoseAndGaugeHead`. A gauge is made to be
 * within a share of its full scale, not of its reading: a 100 psi gauge of grade B that reads 20 psi may be 3 psi
 * wrong, 15 % of the head. The limit is taken as a rectangle. Air left in a pipe takes its own height off the head,
 * and a pipe that leaks is not still.
 *
 * @param input - The reading and the gauge.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Head, limit of the gauge and notices.
 * @throws NonPhysicalError a reading that is not above zero or is beyond the scale; a scale or a division that is none.
 * @throws QuantityError an accuracy that neither standard knows.
 * @example
 * ```ts
 * const { head } = gaugeHead({
 *   gauge: point("local atmosphere", poundPerSquareInch.of(52), "powerhouse"),
 *   fullScale: poundPerSquareInch.of(100),
 *   accuracy: "B",
 *   zero: poundPerSquareInch.of(0),
 *   division: poundPerSquareInch.of(2),
 *   gaugeAboveJet: foot.of(0.5),
 * });
 * format(head, foot, { plusMinus: true }); // => "120.5 ± 5.8 ft (k = 1.96)"
 * ```
 */
export function gaugeHead(input: GaugeHeadInput, options: CallOptions = {}): GaugeHead {
  const {
    gauge,
    fullScale,
    zero,
    division,
    gaugeAboveJet,
    density,
    gravity,
    name = "gauge",
  } = input;
  refuseIf(problemsOf(input));
  const part = gauge["~si"] / fullScale["~si"];
  const { share, source } = limitAt(input.accuracy, part);
  const limit = fullScale.times(share.in(percent) / 100);
  let reading = zero ? gauge.minus(zero) : gauge;
  reading = reading.within(limit, `${name}.accuracy`);
  if (division) reading = reading.within(division.times(0.5), `${name}.reading`);
  const notices = noticesOf(input, part, limit, source);
  for (const notice of notices) options.onNotice?.(notice);
  const head = hoseAndGaugeHead({ gauge: reading, gaugeAboveJet, density, gravity }, options);
  return { head, limit, notices };
}

/** What a gauge may be wrong by at a part of its scale. */
function limitAt(
  accuracy: GaugeAccuracy,
  part: number,
): { share: Quantity<"ratio">; source: Citation } {
  const grades: readonly string[] = gaugeGrades.keys();
  if (!grades.includes(accuracy)) {
    const key = accuracy as ReturnType<typeof gaugeClasses.keys>[number];
    return { share: gaugeClasses.get(key, "limit"), source: gaugeClasses.definition.source };
  }
  const grade = accuracy as ReturnType<typeof gaugeGrades.keys>[number];
  const column = part < 0.25 ? "lowerQuarter" : part > 0.75 ? "upperQuarter" : "middleHalf";
  return { share: gaugeGrades.get(grade, column), source: gaugeGrades.definition.source };
}

function noticesOf(
  { gauge, fullScale, zero }: GaugeHeadInput,
  part: number,
  limit: Quantity<"pressure">,
  source: Citation,
): Notice[] {
  const notices: Notice[] = [];
  if (part < 0.25) {
    notices.push({
      code: `${what}/low-on-scale`,
      severity: "note",
      path: ["gauge"],
      message: `${what}: gauge = ${dialText(gauge)} is in the lowest quarter of a scale of ${String(fullScale)}: the gauge may be wrong by ${Math.round((100 * limit["~si"]) / gauge["~si"])} % of it. Read a gauge of which it is half the scale.`,
      actual: dialText(gauge),
      limit: "at least a quarter of the scale",
      source,
    });
  }
  if (zero && Math.abs(zero["~si"]) > limit["~si"]) {
    notices.push({
      code: `${what}/zero-off`,
      severity: "caution",
      path: ["zero"],
      message: `${what}: zero = ${String(zero)} is more than this gauge may be wrong by anywhere. It was strained: read another gauge.`,
      actual: String(zero),
      source,
    });
  }
  return notices;
}

function problemsOf({ gauge, fullScale, division }: GaugeHeadInput): Notice[] {
  const problems: Notice[] = [];
  const above = (key: string, q: AnyQuantity): void => {
    if (!(q["~si"] > 0))
      problems.push(
        fault(
          what,
          [key],
          `${key} = ${String(q)} is not above zero. Give what stands on the dial.`,
        ),
      );
  };
  above("fullScale", fullScale);
  if (division) above("division", division);
  if (!isPoint(gauge) || problems.length > 0) return problems;
  if (!(gauge["~si"] > 0)) {
    problems.push(
      fault(
        what,
        ["gauge"],
        `gauge = ${dialText(gauge)} is not above zero: no water stands over it. Fill the pipe to the intake and let it come to rest.`,
      ),
    );
  } else if (gauge["~si"] > fullScale["~si"]) {
    problems.push(
      fault(
        what,
        ["gauge"],
        `gauge = ${dialText(gauge)} is beyond a scale of ${String(fullScale)}, where no gauge can read.${otherUnit(gauge, fullScale)}`,
        { actual: dialText(gauge), limit: `at most ${String(fullScale)}` },
      ),
    );
  }
  return problems;
}

/** What was read, without the name of the station. */
function dialText(gauge: Point<"local atmosphere">): string {
  return gauge.overOrigin().toString();
}

/** A number that fits the dial in psi and not in its own unit was most likely read in psi. */
function otherUnit(gauge: Point<"local atmosphere">, fullScale: Quantity<"pressure">): string {
  const number = gauge.overOrigin()["~number"];
  const inPsi = poundPerSquareInch.of(number);
  return inPsi["~si"] < gauge["~si"] && inPsi["~si"] <= fullScale["~si"]
    ? ` Was it ${inPsi.toString()}?`
    : " Check its unit.";
}
