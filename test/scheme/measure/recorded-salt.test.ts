import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";

import { cubicMetrePerSecond } from "@leat/quantity";
import { measureSurvey } from "@leat/scheme";
import { readFieldSurvey } from "@leat/scheme/read";
import { describe, expect, it } from "vitest";

import { said } from "./measuring.ts";

// A slug of 100 kg, University of British Columbia, CIVL 418, notebook 1 (CC-BY 4.0): its printed output is 11.9 m³/s,
// the background as the mean of the first 150 readings, the sum over 190 s < t < 700 s.
const folder = join(import.meta.dirname, "../../../../shared/reference/data");
const there = existsSync(join(folder, "salt_slug_2010-09-26_ec.csv"));
if (!there) console.warn(`recorded-salt.test.ts is skipped: there is no ${folder}`);

const survey = (rest = ""): string => `
stream:
  name: slug of salt
  on: 2010-09-26
  salt:
    mass: 100 kg
    probes:
      - file: salt_slug_2010-09-26_ec.csv
        time: Time (s)
        time unit: s
        conductivity: ECT (uS/cm)
        conductivity unit: µS/cm
        temperature: Temperature (C)
        temperature unit: °C
        reads: compensated
    calibration:
      water: 500 mL
      solution: 10 g/L
      made with: stream water
      readings:
        file: salt_slug_2010-09-26_cal.csv
        added: Calibration solution added (ml)
        added unit: mL
        conductivity: Conductivity (microSiemens/cm)
        conductivity unit: µS/cm
${rest}`;

function measured(
  text: string,
  change: (text: string) => string = (same) => same,
): ReturnType<typeof measureSurvey> {
  const read = readFieldSurvey(text, "creek.yaml", (name) => {
    const file = readFileSync(join(folder, name), "utf8");
    return name.endsWith("_ec.csv") ? change(file) : file;
  });
  return measureSurvey(read.survey, read.assumed);
}

describe.skipIf(!there)("a recorded slug of 100 kg, through a survey", () => {
  it.each([
    ["by itself", ""],
    [
      "with the printed window and background",
      "    window: { from: 191 s, to: 699 s }\n    background: { from: 1 s, to: 150 s }\n",
    ],
  ])("gives the printed 11.9 m³/s %s", (_, rest) => {
    const { flow } = measured(survey(rest));
    const [only] = flow!.measurements;
    expect(Math.abs(only!.value.in(cubicMetrePerSecond) - 11.9)).toBeLessThan(0.1);
    expect(only).toMatchObject({ name: "slug of salt", by: "salt slug", on: "2010-09-26" });
    expect(only!.notices.filter(({ severity }) => severity === "stop")).toEqual([]);
    // 7 % for the mixing that one probe does not see, and the rest.
    expect(only!.half["~si"] / only!.value["~si"]).toBeGreaterThan(0.07);
    expect(only!.half["~si"] / only!.value["~si"]).toBeLessThan(0.08);
  });

  it("gives it with a fault code planted at the peak, and says so by its line", () => {
    const { flow } = measured(survey(), (text) => text.replace(/^265,\d+,/mu, "265,-9999,"));
    const [only] = flow!.measurements;
    expect(Math.abs(only!.value.in(cubicMetrePerSecond) - 11.9)).toBeLessThan(0.1);
    // Second 265 stands on line 266, below the headings.
    expect(said(only!, "readings-fault-code")?.message).toMatch(
      /^salt_slug_2010-09-26_ec\.csv: line 266 /u,
    );
    expect(only!.facts.find(({ what }) => what.startsWith("rows at fault in "))?.value).toMatch(
      /^1, bridged/u,
    );
  });

  it("is a stop where the record is cut off in the tail", () => {
    const { flow } = measured(survey(), (text) => text.replace(/^350,[^]*$/mu, ""));
    const [only] = flow!.measurements;
    expect(said(only!, "tail-missing")?.severity).toBe("stop");
  });
});
