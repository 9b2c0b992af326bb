import {
  kindsvaterCarterDischarge,
  partlyContractedVNotchDischarge,
  vNotchDischarge,
} from "@leat/flow-measurement";
import { degree, foot, inch, litrePerSecond, metre, millimetre } from "@leat/quantity";
import type { Board } from "@leat/scheme";
import { describe, expect, it } from "vitest";

import { measure } from "./measuring.ts";

function board(text: string): Board {
  const [only, ...more] = measure(text).boards;
  if (!only || more.length > 0) throw new Error("not one board");
  return only;
}

const marks = ({ lines }: Board): string[] => lines.map(({ mark }) => mark);
const valid = ({ lines }: Board): string[] =>
  lines.filter((line) => line.valid).map(({ mark }) => mark);

describe("the board that a survey names", () => {
  const named = board(
    "stream: { flow: 12 L/s, board: { shape: V, angle: 60°, sill: 0.5 m, channel: 2 m, from: 40 mm, to: 200 mm, division: 20 mm } }",
  );

  it("has a line for each division of its ruler, in the ruler's unit", () => {
    expect([named.name, marks(named)]).toEqual([
      "V notch",
      ["40 mm", "60 mm", "80 mm", "100 mm", "120 mm", "140 mm", "160 mm", "180 mm", "200 mm"],
    ]);
  });

  it("marks where the form holds: from 60 mm of head on, up to 0.4 of the vertex's height", () => {
    expect(valid(named)).toEqual(marks(named).slice(1));
    expect(named.lines[0]?.notices[0]?.code).toBe("v-notch-discharge/out-of-range");
  });

  it("gives the form's flow at each mark, within half a division and the equation", () => {
    for (const { head, flow } of named.lines) {
      const h = head.in(millimetre);
      const q = vNotchDischarge(
        {
          head: millimetre.of(h),
          angle: degree.of(60),
          crestHeight: metre.of(0.5),
          approachWidth: metre.of(2),
        },
        { onNotice: () => undefined },
      ).in(litrePerSecond);
      expect(flow?.in(litrePerSecond)).toBeCloseTo(q, 9);
      // 10 mm either way, a rectangle; dQ/Q = 5/2·dh/(h + kh), kh 0.9 to 1.2 mm; the equation's 1 %.
      const relative = (1.959964 * flow!.standardUncertainty().in(litrePerSecond)) / q;
      const byHand = Math.hypot((2.5 * 10 * 1.959964) / Math.sqrt(3) / (h + 1.1), 0.01);
      expect(relative / byHand).toBeCloseTo(1, 1);
    }
  });

  it("stands in place of those of the notches that were measured", () => {
    const one = board(
      "stream: { notch: { shape: rectangular, width: 0.5 m, head: 100 mm, sill: 0.5 m, channel: 2 m }, board: { shape: V, angle: 60°, sill: 0.5 m, channel: 2 m, from: 40 mm, to: 60 mm, division: 20 mm } }",
    );
    expect([one.name, marks(one)]).toEqual(["V notch", ["40 mm", "60 mm"]]);
  });

  it("is divided as it is written: fractions of an inch, tenths of a foot", () => {
    const at = "shape: rectangular, width: 16 in, sill: 1 ft, channel: 5 ft";
    expect(
      marks(
        board(`stream: { flow: 12 L/s, board: { ${at}, from: 2 in, to: 3 in, division: 1/4 in } }`),
      ),
    ).toEqual(['2"', '2 1/4"', '2 1/2"', '2 3/4"', '3"']);
    expect(
      marks(
        board(
          `stream: { flow: 12 L/s, board: { ${at}, from: 0.2 ft, to: 0.3 ft, division: 0.05 ft } }`,
        ),
      ),
    ).toEqual(["0.2 ft", "0.25 ft", "0.3 ft"]);
  });

  it("of a right angle has the form that holds over the most of its ruler", () => {
    const at = "shape: V, angle: 90°, from: 60 mm, to: 240 mm, division: 20 mm";
    const near = board(`stream: { flow: 12 L/s, board: { ${at}, sill: 0.2 m, channel: 0.8 m } }`);
    expect(near.source).toEqual(partlyContractedVNotchDischarge.definition.source);
    expect(valid(near)).toEqual(marks(near));
    const far = board(`stream: { flow: 12 L/s, board: { ${at}, sill: 0.8 m, channel: 2 m } }`);
    expect(far.source).toEqual(vNotchDischarge.definition.source);
  });
});

describe("the board of a notch that was measured", () => {
  it("goes from a division to half as much again as was read", () => {
    const { name, lines, source } = board(
      "stream: { name: at the ford, notch: { shape: rectangular, width: 16 in, head: 2 in, read to: 1/8 in, sill: 1 ft, channel: 5 ft } }",
    );
    expect([name, lines[0]?.mark, lines.at(-1)?.mark, lines.length]).toEqual([
      "at the ford, rectangular notch",
      '1/8"',
      '3"',
      24,
    ]);
    expect(source).toEqual(kindsvaterCarterDischarge.definition.source);
    const line = lines.find(({ mark }) => mark === '2"');
    expect(line?.flow?.in(litrePerSecond)).toBeCloseTo(
      kindsvaterCarterDischarge({
        head: inch.of(2),
        notchWidth: inch.of(16),
        crestHeight: foot.of(1),
        approachWidth: foot.of(5),
      }).in(litrePerSecond),
      9,
    );
  });

  it("has no more than sixty lines: a fine ruler is halved, or counted in tens", () => {
    const notch = (head: string): Board =>
      board(
        `stream: { notch: { shape: rectangular, width: 2 m, head: ${head}, sill: 1 m, channel: 5 m } }`,
      );
    expect(marks(notch("10 in, read to: 1/16 in")).slice(0, 3)).toEqual(['1/4"', '1/2"', '3/4"']);
    expect(marks(notch("250 mm, read to: 1 mm")).slice(0, 2)).toEqual(["10 mm", "20 mm"]);
    expect(marks(notch("250 mm")).slice(0, 2)).toEqual(["10 mm", "20 mm"]);
    expect(marks(notch("0.8 ft, read to: 0.01 ft")).slice(0, 2)).toEqual(["0.02 ft", "0.04 ft"]);
  });

  it("is read as finely as the notch was, though it has fewer marks", () => {
    const { lines } = board(
      "stream: { notch: { shape: rectangular, width: 2 m, head: 250 mm, read to: 1 mm, sill: 1 m, channel: 5 m } }",
    );
    const line = lines.find(({ mark }) => mark === "250 mm");
    const relative = (1.959964 * line!.flow!.standardUncertainty()["~si"]) / line!.flow!["~si"];
    // Half a millimetre, a rectangle; dQ/Q = 3/2·dh/h and a little more as the coefficient rises; 1.5 %.
    expect(relative).toBeCloseTo(Math.hypot((0.75 * 1.959964) / Math.sqrt(3) / 250, 0.015), 3);
  });

  it("is made of each of several, and of none whose surroundings are not known or that was drowned", () => {
    const { boards } = measure(`
stream:
  measured:
    - { name: upper, notch: { shape: V, angle: 90°, head: 100 mm, sill: 0.5 m, channel: 2 m } }
    - notch: { shape: trapezoidal, width: 0.5 m, head: 100 mm, sill: 0.5 m, channel: 2 m }
    - notch: { shape: rectangular, width: 0.5 m, head: 100 mm }
    - notch: { shape: V, angle: 90°, head: 100 mm, sill: 0.5 m, channel: 2 m, tail water: 20 mm }
    - flow: 12 L/s
`);
    expect(boards.map(({ name }) => name)).toEqual(["upper, V notch", "trapezoidal notch"]);
  });
});

describe("what must stay", () => {
  const at =
    "shape: V, angle: 60°, sill: 0.5 m, channel: 2 m, from: 60 mm, to: 200 mm, division: 20 mm";

  it("has its level on the board, where it is a flow", () => {
    const { stays } = board(`stream: { flow: 12 L/s, leave: 4 L/s, board: { ${at} } }`);
    expect(stays?.flow.in(litrePerSecond)).toBeCloseTo(4, 12);
    // At that level the form gives 4 L/s and 1 % of the equation on top.
    const q = vNotchDischarge({
      head: stays!.level!,
      angle: degree.of(60),
      crestHeight: metre.of(0.5),
      approachWidth: metre.of(2),
    }).in(litrePerSecond);
    expect(q).toBeGreaterThan(4);
    expect(q).toBeLessThan(4.1);
  });

  it("has none where the notch cannot show it, or where it is a share", () => {
    const little = board(`stream: { flow: 12 L/s, leave: 0.1 L/s, board: { ${at} } }`);
    expect(little.stays?.level).toBeUndefined();
    expect(board(`stream: { flow: 12 L/s, leave: 30 %, board: { ${at} } }`).stays).toBeUndefined();
  });
});
