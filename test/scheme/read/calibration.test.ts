import { existsSync, readFileSync } from "node:fs";

import { celsius, cubicMetre, microsiemensPerCentimetre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

import {
  type Calibration,
  type CalibrationSpec,
  readCalibration,
} from "../../../packages/scheme/src/read/calibration.ts";
import { problemsOf } from "./problems-of.ts";

const spec: CalibrationSpec = {
  added: { column: "Added", unit: "cm3" },
  conductivity: { column: "EC", unit: "µS/cm" },
  temperature: { column: "T", unit: "°C" },
};
const calibration = (rows: readonly string[], more: Partial<CalibrationSpec> = {}): Calibration =>
  readCalibration(["Added;EC;T", ...rows].join("\n"), "lab/cal.csv", { ...spec, ...more });
const refused = (rows: readonly string[], more: Partial<CalibrationSpec> = {}): string[] =>
  problemsOf(() => calibration(rows, more));

describe("a calibration", () => {
  it("has its steps, with the spread that is written of them", () => {
    const { steps } = calibration(["0;300;10,8", "1 ± 0,02;340;", "2 +/- 0,02;381;11"]);
    expect(steps.map(({ added }) => added.in(cubicMetre))).toEqual([0, 1e-6, 2e-6]);
    expect(steps.map(({ conductivity }) => conductivity.in(microsiemensPerCentimetre))).toEqual([
      300, 340, 381,
    ]);
    expect(steps.map(({ temperature }) => temperature?.in(celsius))).toEqual([10.8, undefined, 11]);
    expect(steps.map(({ line }) => line)).toEqual([2, 3, 4]);
    expect(steps.map(({ added }) => [...added.sources().keys()])).toEqual([
      [],
      ["cal.2.added"],
      ["cal.3.added"],
    ]);
    expect(steps[1]?.added.standardUncertainty().in(cubicMetre)).toBeCloseTo(0.02e-6 / 1.96, 10);
  });

  it("names its sources as it is told", () => {
    const { steps } = calibration(["1 ± 0,1;300 ± 2;"], { source: "creek.stream.calibration" });
    expect(
      steps.flatMap(({ added, conductivity }) => [
        ...added.sources().keys(),
        ...conductivity.sources().keys(),
      ]),
    ).toEqual(["creek.stream.calibration.1.added", "creek.stream.calibration.1.conductivity"]);
  });

  it.each<[string, readonly string[], Partial<CalibrationSpec>, readonly string[]]>([
    [
      "steps that are not added up",
      ["1;300;", "1;340;"],
      {},
      [
        "3:1: calibration/order: Added 1 cm³ is not above that of line 2, 1 cm³. Write the volume added so far, in all.",
      ],
    ],
    ["a reading that is missing", ["1;;10"], {}, ["2:3: calibration/number: EC is empty."]],
    [
      "a reading that is no number",
      ["1;over;10"],
      {},
      ['2:3: calibration/number: EC "over" is not a number.'],
    ],
    [
      "a reading that is negative",
      ["1;-5;10"],
      {},
      ['2:3: calibration/number: EC "-5" is negative.'],
    ],
    [
      "a spread that is none",
      ["1 ± x;5;10"],
      {},
      ['2:1: calibration/number: Added "1 ± x" is not read: x cm3 does not begin with a number.'],
    ],
    [
      "a unit of something else",
      ["1;5;10"],
      { added: { column: "Added", unit: "m" } },
      [
        "1:1: calibration/unit: added unit: m is a unit of length; a unit of volume is needed, such as L.",
      ],
    ],
  ])("is refused for %s", (_, rows, more, problems) => {
    expect(refused(rows, more)).toEqual(problems.map((problem) => `lab/cal.csv:${problem}`));
  });
});

const file = "../shared/reference/data/salt_slug_2010-09-26_cal.csv";

describe.skipIf(!existsSync(file))(
  "a calibration at a stream (salt_slug_2010-09-26_cal.csv, absent: skipped)",
  () => {
    it("has the seven readings of the file, and its remarks passed over", () => {
      const { steps, counts, notes } = readCalibration(readFileSync(file, "utf8"), "cal.csv", {
        added: { column: "Calibration solution added (ml)", unit: "cm3" },
        conductivity: { column: "Conductivity (microSiemens/cm)", unit: "µS/cm" },
        temperature: { column: "Temperature (C)", unit: "°C" },
      });
      // As they stand in the file.
      const readings = [303, 343, 380, 426, 464, 505, 546];
      expect(steps.map(({ conductivity }) => conductivity.in(microsiemensPerCentimetre))).toEqual(
        readings,
      );
      expect(steps.map(({ added }) => added.in(cubicMetre) * 1e6)).toEqual(
        readings.map((_, ml) => expect.closeTo(ml, 10)),
      );
      expect(steps.map(({ temperature }) => temperature?.in(celsius))).toEqual(
        readings.map(() => expect.closeTo(10.8, 10)),
      );
      expect(counts).toMatchObject({ rowsElsewhere: 3, rowsEmpty: 0 });
      expect(notes.map(({ line, code }) => [line, code])).toEqual([[11, "file/other-row"]]);
    });
  },
);
