import { type CallOptions, commonPractice } from "@leat/formula";
import { metre, type Point, point, type Quantity } from "@leat/quantity";

import { fault, refusal } from "../refusal.ts";
import { disagreement, scatterOf } from "./scatter.ts";
import { gum } from "./sources.ts";

const id = "staff-readings";

/** Several readings of one staff at one time. */
export interface StaffReadingsInput {
  /** Names this reading: its sources of uncertainty are called after it. */
  readonly name: string;
  /** What each reader read, on the same staff. */
  readonly readings: readonly Point<"staff zero">[];
  /** Smallest division of the staff. */
  readonly division: Quantity<"length">;
  /** Half the 95 % interval of the staff's own error: its zero and its scale. Common to all readers. */
  readonly calibration?: Quantity<"length"> | undefined;
}

/** What the readers say together. */
export interface StaffReadingsResult {
  /** Mean level, with its sources: noise of reading, rounding where it does not show in the noise, calibration. */
  readonly level: Point<"staff zero">;
  /** Noise of one reading: standard deviation among readers; absent for one alone. */
  readonly noise: Quantity<"length"> | undefined;
  /** Noise of the mean, s/√n; absent for one alone. */
  readonly standardError: Quantity<"length"> | undefined;
  /** Rows of the readings that stand out, by Grubbs' criterion. They are counted all the same. */
  readonly outliers: readonly number[];
}

/**
 * One level of several readers of one staff.
 *
 *     h = Σ(h)/n,   ± t(0.975, n − 1)·s/√n of reading
 *
 * What readers differ in is noise: it averages out, and ten readers have a third of one reader's. What they have in
 * common is not seen in their scatter, however many they are: the staff's calibration, a source of its own called after the
 * staff, so that every level read on it shares it; and the rounding to the division where all round alike. Rounding
 * counts as common, division/√12, where the scatter is smaller than that; where it is larger the readers have told it
 * apart among themselves.
 *
 * @param input - The readings.
 * @param options - Who is told.
 * @returns Level, noise, and who stands out.
 * @throws NonPhysicalError no reading, a division not above zero.
 * @throws QuantityError readings of different staffs.
 * @example
 * ```ts
 * import { staffReadings } from "@leat/flow-measurement";
 * import { centimetre, format, millimetre, point } from "@leat/quantity";
 *
 * const { level } = staffReadings({
 *   name: "staff at the bridge, 3 May",
 *   readings: [41.2, 41.5, 41.3, 41.4, 41.6].map((h) =>
 *     point("staff zero", centimetre.of(h), "bridge"),
 *   ),
 *   division: millimetre.of(5),
 *   calibration: millimetre.of(3),
 * });
 * format(level.overOrigin(), millimetre, { plusMinus: true }); // => "414.0 ± 3.6 mm (k = 1.96)"
 * ```
 * @see JCGM 100 (GUM), 4.2 and F.2.2.1
 */
export function staffReadings(
  input: StaffReadingsInput,
  options: Pick<CallOptions, "onNotice"> = {},
): StaffReadingsResult {
  const tell = options.onNotice ?? (() => undefined);
  const { name, readings, division, calibration } = input;
  const [first] = readings;
  if (!first)
    throw refusal([
      fault(id, ["readings"], "readings = none. Read the staff once or more.", { actual: "0" }),
    ]);
  if (!(division["~si"] > 0)) {
    throw refusal([
      fault(
        id,
        ["division"],
        `division = ${division.toString()} is not above zero, which no staff has.`,
        { actual: division.toString() },
      ),
    ]);
  }
  // Subtracting refuses another staff.
  const above = readings.map((reading) => reading.minus(first)["~si"]);
  const { count, deviation, standardError, half95 } = scatterOf(above);
  const lengths = readings.map((reading) => reading.overOrigin().dividedBy(count));
  let level = point(
    "staff zero",
    lengths.reduce((sum, part) => sum.plus(part)),
    first.instance,
  );
  if (half95 > 0) level = level.plusMinus(metre.of(half95), `${name}: noise of reading`);
  const rounding = division["~si"] / Math.sqrt(12);
  if (deviation < rounding) {
    level = level.within(division.dividedBy(2), `${name}: rounding to the division`);
    tell({
      code: `${id}/rounding`,
      severity: "note",
      path: ["division"],
      message:
        count === 1
          ? `${id}: one reader shows no noise: half a division either way is taken.`
          : `${id}: ${count} readers differ by less than their rounding to ${division.toString()}: half a division either way is taken, common to all.`,
      source: gum.at("F.2.2.1, resolution of an indication", "memory"),
    });
  }
  if (calibration) {
    level = level.plusMinus(calibration, `${first.instance ?? name}: calibration of the staff`);
  } else {
    tell({
      code: `${id}/calibration`,
      severity: "note",
      path: ["calibration"],
      message: `${id}: nothing is said of the staff's own error, which no number of readers averages out: the ± is that of reading alone.`,
      source: commonPractice.at("calibration and reading are told apart", "practice"),
    });
  }
  const notices = disagreement(
    above.map((h) => first.overOrigin()["~si"] + h),
    {
      id,
      path: ["readings"],
      plural: "readings",
      say: (h) => `${Number(h.toPrecision(6))} m`,
      advice: "Was a whole mark misread? Ask for another look.",
    },
  );
  for (const notice of notices) tell(notice);
  return {
    level,
    noise: count > 1 ? metre.of(deviation) : undefined,
    standardError: count > 1 ? metre.of(standardError) : undefined,
    outliers: notices.flatMap(({ path }) => path.filter((part) => typeof part === "number")),
  };
}
