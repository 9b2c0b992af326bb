import { flowDuration } from "@leat/hydrology";
import { Column } from "@leat/quantity/column";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

// By its file: it is not public.
import { sortDescending } from "../../../packages/hydrology/src/duration/sort-descending.ts";
import { flowsOf, record } from "../records.ts";

const sizes = fc.constantFrom(1, 2, 1999, 2000, 2001, 5000);

describe("sortDescending", () => {
  it("orders as comparing does, at every size", () => {
    const flow = fc.oneof(
      fc.double({ min: 0, max: 1000, noNaN: true }),
      fc.double({ min: 0, noNaN: true, noDefaultInfinity: true }),
      fc.constantFrom(0, 5e-324, 2.225e-308, 1, 2, 1.7976931348623157e308),
    );
    fc.assert(
      fc.property(sizes, fc.array(flow, { minLength: 1, maxLength: 60 }), (size, few) => {
        const flows = Float64Array.from(
          { length: size },
          (_, at) => few[(at * 7) % few.length]! + 0,
        );
        const expected = flows.toSorted((a, b) => b - a);
        const kept = flows.slice();
        expect(sortDescending(kept)).toEqual(expected);
      }),
      { numRuns: 40 },
    );
  });

  it("orders numbers of every digit", () => {
    const flows = Float64Array.from({ length: 40_000 }, (_, at) =>
      Math.abs(Math.sin(at) * 1e3 ** Math.cos(at)),
    );
    expect(sortDescending(flows.slice())).toEqual(flows.toSorted((a, b) => b - a));
  });

  it("meets no negative zero, whose bits are out of order", () => {
    const plain = record(flowsOf(3000, (row) => row % 7));
    const values = plain.values.map((flow) => (flow === 0 ? -0 : flow));
    const flows = Column.wrap("volume flow", values, plain.quality, { axis: plain.axis });
    expect(flowDuration({ record: flows }).flows.values).toEqual(
      flowDuration({ record: plain }).flows.values,
    );
  });
});
