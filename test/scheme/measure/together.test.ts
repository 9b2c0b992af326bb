import { foot, litrePerSecond, metre } from "@leat/quantity";
import { describe, expect, it } from "vitest";

import { measure } from "./measuring.ts";

const day = (rows: readonly string[]): string =>
  `stream:\n  measured:\n${rows.map((row) => `    - { ${row} }`).join("\n")}\n`;

describe("measurements of one day", () => {
  const { flow, notices, assumed } = measure(
    day([
      "name: notch, on: 2026-08-14, flow: 12 L/s ± 1 L/s",
      "on: 2026-08-14, flow: 11 L/s ± 2 L/s",
    ]),
  );

  it("are combined by the squares of their ±", () => {
    // Weights 4 to 1: 11.8 ± 2/√5.
    expect(flow?.combined).toHaveLength(1);
    const [together] = flow!.combined;
    expect(together).toMatchObject({ on: "2026-08-14", of: [0, 1], agree: true });
    expect(together?.weights).toEqual([expect.closeTo(0.8, 12), expect.closeTo(0.2, 12)]);
    expect(together?.value.in(litrePerSecond)).toBeCloseTo(11.8, 12);
    expect(1.959964 * together!.value.standardUncertainty().in(litrePerSecond)).toBeCloseTo(
      2 / Math.sqrt(5),
      5,
    );
    expect([flow?.by, flow?.taken]).toEqual(["2 measurements together", together]);
  });

  it("say nothing of the day where there is one, and nothing of a disagreement", () => {
    expect(notices.map(({ code }) => code)).toEqual(["moving-water"]);
    expect(assumed.filter(({ path }) => path.join(".") === "stream.measured")).toEqual([]);
  });

  it("that disagree are told with their names, and the ± is widened", () => {
    const { flow: apart, notices: said } = measure(
      day([
        "name: notch, on: 2026-08-14, flow: 12 L/s ± 1 L/s",
        "name: floats, on: 2026-08-14, flow: 20 L/s ± 2 L/s",
      ]),
    );
    // χ² is (8·1.96)²/5, with one degree of freedom: the Birge ratio is its root, 7.01.
    const birge = (8 * 1.959964) / Math.sqrt(5);
    const [together] = apart!.combined;
    expect(together?.agree).toBe(false);
    expect(together?.value.in(litrePerSecond)).toBeCloseTo(12.8 + 0.8, 12);
    expect(1.959964 * together!.value.standardUncertainty().in(litrePerSecond)).toBeCloseTo(
      (birge * 2) / Math.sqrt(5),
      5,
    );
    expect(said.find(({ code }) => code === "measurements-disagree")).toEqual({
      code: "measurements-disagree",
      severity: "caution",
      path: ["stream", "measured"],
      message:
        "notch (1) and floats (2) disagree: they are 7.0 times the standard uncertainty of their difference apart. The mean of the two is used, and its ± is widened 7.0 times; look for what is wrong with one of them before anything is built on it.",
      actual: "7.0",
      limit: "at most 1.96",
    });
  });

  it("of which two are apart and all together agree are told with their names", () => {
    const { notices: said } = measure(
      day([
        "name: notch, on: 2026-08-14, flow: 10.0 L/s ± 1 L/s",
        "name: bucket, on: 2026-08-14, flow: 11.5 L/s ± 1 L/s",
        "name: floats, on: 2026-08-14, flow: 10.7 L/s ± 1 L/s",
      ]),
    );
    // 1.5·1.96/√2.
    expect(said.filter(({ severity }) => severity === "note")).toEqual([
      {
        code: "measurements-apart",
        severity: "note",
        path: ["stream", "measured"],
        message:
          "notch (1) and bucket (2) are 2.08 times the standard uncertainty of their difference apart; all together still agree.",
        actual: "2.08",
        limit: "at most 1.96",
      },
    ]);
  });

  it("share what they share: one vessel's mark does not average out", () => {
    const { flow: both } = measure(
      day([
        "on: 2026-08-14, notch: { shape: V, angle: 60°, head: 150 mm ± 0.01 mm, sill: 0.5 m, channel: 2 m }",
        "on: 2026-08-14, notch: { shape: V, angle: 60°, head: 150 mm ± 0.01 mm, sill: 0.5 m, channel: 2 m }",
      ]),
    );
    const [one] = both!.measurements;
    const ratio =
      both!.taken.value.standardUncertainty()["~si"] / one!.value.standardUncertainty()["~si"];
    // The equation of the weir, 1 %, is the same in both; the heads are nothing beside it.
    expect(ratio).toBeCloseTo(1, 3);
  });
});

describe("measurements of several days", () => {
  const { flow, assumed, notices } = measure(
    day([
      "on: 2026-08-20, flow: 9 L/s ± 1 L/s",
      "on: 2026-08-14, flow: 12 L/s ± 1 L/s",
      "flow: 30 L/s ± 1 L/s",
      "on: 2026-08-20, flow: 10 L/s ± 1 L/s",
    ]),
  );

  it("are kept apart, in the order of the days, those without one first", () => {
    expect(flow?.combined.map(({ on, of }) => [on, of])).toEqual([
      [undefined, [2]],
      ["2026-08-14", [1]],
      ["2026-08-20", [0, 3]],
    ]);
    expect(notices.some(({ code }) => code === "measurements-disagree")).toBe(false);
  });

  it("give the last day's for the scheme, and that is listed", () => {
    expect(flow?.taken.on).toBe("2026-08-20");
    expect(flow?.taken.value.in(litrePerSecond)).toBeCloseTo(9.5, 12);
    expect(assumed.find(({ path }) => path.join(".") === "stream.measured")).toEqual({
      path: ["stream", "measured"],
      what: "flow that the scheme is made for",
      value: "that of 2026-08-20, the last of 3 days",
      because: undefined,
    });
  });
});

describe("one measurement", () => {
  it("stands straight under the stream, and the fall", () => {
    const { flow, fall } = measure(
      "stream: { name: drum, on: 2026-08-14, bucket: [{ volume: 20 L, time: 10 s }] }\nfall: { name: hose, gauge: 3.2 bar }",
    );
    expect(flow?.measurements).toHaveLength(1);
    expect(flow?.measurements[0]).toMatchObject({
      path: ["stream"],
      name: "drum",
      by: "timed volume",
      on: "2026-08-14",
    });
    expect(fall?.measurements[0]).toMatchObject({ path: ["fall"], name: "hose", by: "gauge" });
    expect(flow?.taken).toMatchObject({ of: [0], weights: [1], agree: true, on: "2026-08-14" });
    expect(flow?.by).toBe("timed volume");
  });

  it("of the flow is enough, and so is a stream that is known by a record alone", () => {
    expect(measure("stream: 12 L/s").fall).toBeUndefined();
    const known = measure(
      "stream: { record: { file: days.csv, date: Date, date form: YYYY-MM-DD, flow: Flow, flow unit: L/s } }\nfall: 110 ft",
      { "days.csv": "Date,Flow\n2026-01-01,12\n2026-01-02,13\n" },
    );
    expect(known.flow).toBeUndefined();
    expect(known.fall?.taken.value.in(foot)).toBeCloseTo(110, 12);
  });
});

describe("measurements of the fall", () => {
  it("are all of one fall, which does not change with the day", () => {
    const { fall } = measure(
      "stream: 12 L/s\nfall:\n  measured:\n    - gross: 30 m ± 0.3 m\n    - gross: 30.5 m ± 0.6 m\n",
    );
    expect(fall?.measurements.map(({ path }) => path)).toEqual([
      ["fall", "measured", 0],
      ["fall", "measured", 1],
    ]);
    expect(fall?.taken.value.in(metre)).toBeCloseTo(30.1, 12);
  });
});
