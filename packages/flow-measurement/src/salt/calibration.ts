import { firstPrinciples, NonPhysicalError, type Notice } from "@leat/formula";
import { leastSquares, studentQuantile } from "@leat/numerics";
import {
  celsius,
  coherentUnit,
  coverage95,
  percent,
  type Point,
  type Quantity,
  siemensPerMetre,
} from "@leat/quantity";

import { refused } from "../refusal.ts";
import { counted } from "./readings.ts";
import { streamTemperatureCoefficient } from "./specific-conductivity.ts";
import { contributionsOf, spreadBy } from "./spread.ts";
import { saltFactors } from "./standard-factor.ts";
import type { ConductivityBasis } from "./temperature.ts";

/** A reading of the calibration. */
export interface CalibrationReading {
  /** Standard solution that is in by now, all additions together; nought for the stream water itself. */
  readonly added: Quantity<"volume">;
  /** Conductivity then. */
  readonly conductivity: Quantity<"conductivity">;
  /** Temperature then; needed to bring raw readings to 25 °C. */
  readonly temperature?: Point<"absolute zero"> | undefined;
}

/** A calibration: a standard solution dropped into a known volume of stream water. */
export interface SaltCalibrationInput {
  /** Names the calibration in notices and sources of uncertainty; `salt calibration` by default. */
  readonly name?: string | undefined;
  /** Stream water at the beginning. */
  readonly water: Quantity<"volume">;
  /** Salt in the standard solution. */
  readonly standard: Quantity<"density">;
  /**
   * What the standard was dissolved in. Distilled water thins the stream's own salts as it is added, which is taken out:
   * 6 mL in 500 mL of a stream of 300 µS/cm change the factor by 1.5 %.
   */
  readonly madeWith: "stream water" | "distilled water";
  /** What the readings are: raw, or brought to 25 °C by the meter. */
  readonly basis: ConductivityBasis;
  /** Relative change a kelvin of raw readings; 2.0 ± 0.1 % by default. */
  readonly temperatureCoefficient?: Quantity<"temperature coefficient"> | undefined;
  /** Three readings or more. */
  readonly readings: readonly CalibrationReading[];
}

/** What a calibration gives. */
export interface SaltCalibration {
  /** Its name. */
  readonly name: string;
  /** Salt per volume, over the rise of conductivity: the slope of concentration on conductivity. */
  readonly factor: Quantity<"concentration per conductivity">;
  /** What conductivities it is for. */
  readonly basis: ConductivityBasis;
  /** Standard error of the slope, by the regression alone. */
  readonly standardError: Quantity<"concentration per conductivity">;
  /** Concentration that the line has at no conductivity: minus the factor times the background. */
  readonly intercept: Quantity<"density">;
  /** Conductivity of the water that the line has without salt. */
  readonly background: Quantity<"conductivity">;
  /** What the slope would be with conductivity fitted on concentration, and turned over: it is greater, by 1/R². */
  readonly inverseFactor: Quantity<"concentration per conductivity">;
  /** Concentration less that of the line, by row. */
  readonly residuals: readonly Quantity<"density">[];
  /** Share of the variance that the line explains. */
  readonly rSquared: number;
  /** Readings less two. */
  readonly degreesOfFreedom: number;
  /** Rows whose residual no scatter of the others explains, at 5 % for the whole calibration. They are in the fit. */
  readonly outliers: readonly number[];
  /** Greatest conductivity that it reaches, on its basis. */
  readonly greatest: Quantity<"conductivity">;
  /** What is to be told. */
  readonly notices: readonly Notice[];
}

/** What is told besides the answer. */
export interface NoticeOptions {
  /** Told of what is out of the ordinary, as it is found. */
  readonly onNotice?: ((notice: Notice) => void) | undefined;
}

/** R² below which a line is doubted; careful ones have 0.999 and more. */
const leastRSquared = 0.995;

/** Numbers of a calibration, in coherent units. */
interface Numbers {
  readonly water: number;
  readonly standard: number;
  readonly added: readonly number[];
  readonly conductivity: readonly number[];
  /** Temperature less 25 °C, or undefined. */
  readonly warmth: readonly (number | undefined)[];
  readonly coefficient: number;
  readonly distilled: boolean;
}

/**
 * The factor between conductivity and salt, from known additions of a standard solution to stream water.
 *
 *     c = S · v / (V + v);   c = a + CF · κ, by least squares
 *
 * Concentration is fitted on conductivity, so that the slope is the factor itself, as is usual; all of the error is then taken to be
 * in the concentration. Fitted the other way it comes out greater by 1/R² (0.04 % in a good calibration): that is
 * `inverseFactor`.
 *
 * The uncertainty of the factor is that of the regression, widened by Student's t for the few readings, but not less than the
 * 0.7 % (twice the standard deviation) that careful field calibrations differ by; that of the standard, the volumes and the temperatures
 * comes on top where they have one. Outliers are told and stay in.
 *
 * With a standard made of the solution that will be fed into the stream, concentrations may be relative: any number for the
 * standard, and the same one for the fed solution.
 *
 * @param input - Water, standard and readings.
 * @param options - Told of notices.
 * @returns The factor and what it rests on.
 * @throws NonPhysicalError fewer than three readings, volumes or conductivities not above zero, additions or conductivities
 * that do not rise.
 * @example
 * ```ts
 * import { saltCalibration } from "@leat/flow-measurement";
 * import { format, gramPerLitre, litre, microsiemensPerCentimetre, milligramPerLitrePerMicrosiemensPerCentimetre } from "@leat/quantity";
 *
 * // An invented stream: 2 mL of a standard of 10 g/L at a time, in 1 L.
 * const { factor, rSquared } = saltCalibration({
 *   water: litre.of(1),
 *   standard: gramPerLitre.of(10),
 *   madeWith: "stream water",
 *   basis: "at 25 °C",
 *   readings: [62, 103.1, 144, 184.9, 225.5].map((conductivity, i) => ({
 *     added: litre.of(0.002 * i),
 *     conductivity: microsiemensPerCentimetre.of(conductivity),
 *   })),
 * });
 * format(factor, milligramPerLitrePerMicrosiemensPerCentimetre, 3); // => "0.485 (mg/L)/(µS/cm)"
 * rSquared > 0.9999; // => true
 * ```
 */
export function saltCalibration(
  input: SaltCalibrationInput,
  options: NoticeOptions = {},
): SaltCalibration {
  const name = input.name ?? "salt calibration";
  checkCalibration(name, input);
  const coefficient = input.temperatureCoefficient ?? streamTemperatureCoefficient();
  const { readings } = input;
  const raw = input.basis === "raw";
  const withTemperature = readings.every(({ temperature }) => temperature !== undefined);
  const compensated = raw && withTemperature;
  const numbers: Numbers = {
    water: input.water["~si"],
    standard: input.standard["~si"],
    added: readings.map(({ added }) => added["~si"]),
    conductivity: readings.map(({ conductivity }) => conductivity["~si"]),
    warmth: readings.map(({ temperature }) =>
      compensated && temperature ? temperature.in(celsius) - 25 : undefined,
    ),
    coefficient: coefficient["~si"],
    distilled: input.madeWith === "distilled water",
  };
  const fit = fitted(numbers);
  const n = readings.length;
  const slopeUnit = coherentUnit("concentration per conductivity");
  const density = coherentUnit("density");

  const student = (studentQuantile(0.975, n - 2) / coverage95) * fit.standardError;
  const least = (saltFactors.get("careful", "twoDeviations").in(percent) / 200) * fit.slope;
  const factor = spreadBy(slopeUnit.of(fit.slope), [
    [name, Math.max(student, least)],
    ...inputContributions(input, numbers, compensated ? coefficient : undefined),
  ]);

  const notices: Notice[] = [];
  const tell = (notice: Notice): void => {
    notices.push(notice);
    options.onNotice?.(notice);
  };
  const outliers = outliersOf(fit);
  if (outliers.length > 0) {
    tell({
      code: "calibration-outlier",
      severity: "caution",
      path: ["readings", outliers[0] as number],
      message: `${name}: ${counted(outliers)} does not lie on the line of the others. Repeat the calibration, or leave the reading out and say so.`,
      actual: outliers
        .map((row) => `${(1000 * (fit.residuals[row] as number)).toPrecision(2)} mg/L`)
        .join(", "),
      limit: "what the scatter of the others explains at 5 %",
    });
  }
  if (fit.rSquared < leastRSquared) {
    tell({
      code: "calibration-scatter",
      severity: "caution",
      path: ["readings"],
      message: `${name}: R² = ${fit.rSquared.toFixed(4)}, a good calibration has 0.999 and more. Stir, wait for the meter, and read again.`,
      actual: fit.rSquared.toFixed(4),
      limit: `at least ${leastRSquared}`,
    });
  }
  if (raw && !withTemperature) {
    tell({
      code: "calibration-raw",
      severity: "note",
      path: ["readings"],
      message: `${name}: raw readings without temperatures. The factor holds only for raw readings of water as warm as this.`,
    });
  }
  const temperatures = readings.flatMap(({ temperature }) =>
    temperature ? [temperature.in(celsius)] : [],
  );
  const warmed = Math.max(...temperatures) - Math.min(...temperatures);
  if (warmed > 1) {
    tell({
      code: "calibration-warming",
      severity: "note",
      path: ["readings"],
      message: `${name}: the water warmed by ${warmed.toFixed(1)} K between readings. Stand the vessel in the stream.`,
      actual: `${warmed.toFixed(1)} K`,
      limit: "at most 1 K",
    });
  }
  return {
    name,
    factor,
    basis: compensated ? "at 25 °C" : input.basis,
    standardError: slopeUnit.of(fit.standardError),
    intercept: density.of(fit.intercept),
    background: siemensPerMetre.of(-fit.intercept / fit.slope),
    inverseFactor: slopeUnit.of(fit.slope / fit.rSquared),
    residuals: fit.residuals.map((residual) => density.of(residual)),
    rSquared: fit.rSquared,
    degreesOfFreedom: n - 2,
    outliers,
    greatest: siemensPerMetre.of(Math.max(...fit.conductivity)),
    notices,
  };
}

function checkCalibration(name: string, { water, standard, readings }: SaltCalibrationInput): void {
  const problems: Notice[] = [];
  const problem = (path: readonly (string | number)[], message: string): void => {
    problems.push({
      code: "non-physical",
      severity: "stop",
      path,
      message: `${name}: ${message}`,
      source: firstPrinciples.at("meaning of the input"),
    });
  };
  if (!(water["~si"] > 0)) problem(["water"], `water = ${String(water)} is not above zero.`);
  if (!(standard["~si"] > 0))
    problem(["standard"], `standard = ${String(standard)} is not above zero.`);
  if (readings.length < 3) {
    problem(
      ["readings"],
      `${readings.length} readings make no line with an error. Take five or more, the first without salt.`,
    );
  }
  readings.forEach(({ added, conductivity }, row) => {
    const before = readings[row - 1];
    if (!(added["~si"] >= 0) || (before && !(added["~si"] > before.added["~si"]))) {
      problem(
        ["readings", row, "added"],
        `readings, row ${row}: added = ${String(added)} is not more than in the row before. Give all that is in by now, not the last addition.`,
      );
    }
    if (
      !(conductivity["~si"] > 0) ||
      (before && !(conductivity["~si"] > before.conductivity["~si"]))
    ) {
      problem(
        ["readings", row, "conductivity"],
        `readings, row ${row}: conductivity = ${String(conductivity)} does not rise with the salt. Check the row.`,
      );
    }
  });
  if (problems.length > 0) throw new NonPhysicalError(problems);
}

interface Fit {
  readonly slope: number;
  readonly intercept: number;
  readonly standardError: number;
  readonly rSquared: number;
  readonly residuals: readonly number[];
  readonly conductivity: readonly number[];
}

/** Concentration on conductivity, by least squares, conductivities compensated and thinning taken out. */
function fitted({
  water,
  standard,
  added,
  conductivity,
  warmth,
  coefficient,
  distilled,
}: Numbers): Fit {
  const at25 = conductivity.map((value, row) => {
    const warm = warmth[row];
    return warm === undefined ? value : value / (1 + coefficient * warm);
  });
  // Distilled water leaves V / (V + v) of the stream's own conductivity, which is that of the first row without salt.
  const own = distilled ? (at25[0] as number) * (1 + (added[0] as number) / water) : 0;
  const x = at25.map(
    (value, row) => value + (own * (added[row] as number)) / (water + (added[row] as number)),
  );
  const y = added.map((v) => (standard * v) / (water + v));
  const n = x.length;
  const middle = x.reduce((sum, value) => sum + value, 0) / n;
  const mean = y.reduce((sum, value) => sum + value, 0) / n;
  const report = leastSquares(
    x.map((value) => [1, value - middle]),
    y,
  );
  const slope = report.x[1] as number;
  const variance = report.residualNorm ** 2 / report.degreesOfFreedom;
  const total = y.reduce((sum, value) => sum + (value - mean) ** 2, 0);
  return {
    slope,
    intercept: (report.x[0] as number) - slope * middle,
    standardError: Math.sqrt(variance * (report.unscaledCovariance[3] as number)),
    rSquared: 1 - report.residualNorm ** 2 / total,
    residuals: [...report.residuals],
    conductivity: x,
  };
}

/** What the uncertain inputs contribute to the slope, by differences. */
function inputContributions(
  { water, standard, readings }: SaltCalibrationInput,
  numbers: Numbers,
  coefficient: Quantity<"temperature coefficient"> | undefined,
): (readonly [string, number])[] {
  const slope = (change: (by: number) => Partial<Numbers>, scale: number): number => {
    const step = 1e-4 * scale;
    const at = (by: number): number => fitted({ ...numbers, ...change(by) }).slope;
    return (at(step) - at(-step)) / (2 * step);
  };
  const row = (list: readonly number[], at: number, by: number): number[] =>
    list.map((value, i) => (i === at ? value + by : value));
  const { conductivity, added } = numbers;
  return [
    ...contributionsOf(
      water,
      slope((by) => ({ water: numbers.water + by }), numbers.water),
    ),
    ...contributionsOf(
      standard,
      slope((by) => ({ standard: numbers.standard + by }), numbers.standard),
    ),
    ...(coefficient
      ? contributionsOf(
          coefficient,
          slope((by) => ({ coefficient: numbers.coefficient + by }), numbers.coefficient),
        )
      : []),
    ...readings.flatMap((reading, i) => [
      ...contributionsOf(
        reading.added,
        slope((by) => ({ added: row(added, i, by) }), numbers.water / 100),
      ),
      ...contributionsOf(
        reading.conductivity,
        slope((by) => ({ conductivity: row(conductivity, i, by) }), conductivity[i] as number),
      ),
    ]),
  ];
}

/** Rows that lie further from the line of the others than their scatter explains, at 5 % for all rows together. */
function outliersOf({ slope, residuals, conductivity }: Fit): number[] {
  const n = residuals.length;
  if (n < 4) return [];
  const middle = conductivity.reduce((sum, value) => sum + value, 0) / n;
  const spread = conductivity.reduce((sum, value) => sum + (value - middle) ** 2, 0);
  const squares = residuals.reduce((sum, value) => sum + value ** 2, 0);
  const limit = studentQuantile(1 - 0.025 / n, n - 3);
  // What rounding leaves of a line without scatter is no scatter.
  const rounding = (1e-9 * slope) ** 2 * spread;
  return residuals.flatMap((residual, row) => {
    const leverage = 1 / n + ((conductivity[row] as number) - middle) ** 2 / spread;
    // The variance without this row, of any text on regression.
    const others = Math.max(rounding, (squares - residual ** 2 / (1 - leverage)) / (n - 3));
    return Math.abs(residual) / Math.sqrt(others * (1 - leverage)) > limit ? [row] : [];
  });
}

/**
 * Refuses a calibration of another basis than the readings: neither is of use to the other.
 *
 * @param where - The name that the message begins with.
 * @param basis - What the readings are, once compensated.
 * @param calibration - Name and basis of the calibration.
 */
export function sameBasis(
  where: string,
  basis: ConductivityBasis,
  calibration: { readonly name: string; readonly basis: ConductivityBasis },
): void {
  if (basis === calibration.basis) return;
  throw refused(
    ["calibration"],
    basis === "raw"
      ? `${where}: the readings are raw and have no temperature, the factor (${calibration.name}) is of conductivity at 25 °C. Give the temperature of the water.`
      : `${where}: the readings are at 25 °C, the factor (${calibration.name}) is of raw ones. Calibrate with the temperature written down.`,
    { code: "unlike-conductivities" },
  );
}
