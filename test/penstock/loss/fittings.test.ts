import { fittingCoefficients } from "@leat/penstock";
import { describe, expect, it } from "vitest";

// EPANET 2.2 User Manual, Table 3.3, typed again in another order.
const printed: Readonly<Record<string, number>> = {
  exit: 1,
  "square entrance": 0.5,
  "standard tee, flow through branch": 1.8,
  "standard tee, flow through run": 0.6,
  "closed return bend": 2.2,
  "45 degree elbow": 0.4,
  "long-radius elbow": 0.6,
  "medium-radius elbow": 0.8,
  "short-radius elbow": 0.9,
  "gate valve, fully open": 0.2,
  "swing check valve, fully open": 2.5,
  "angle valve, fully open": 5,
  "globe valve, fully open": 10,
};

describe("fittingCoefficients", () => {
  it("holds the thirteen rows of the manual and no others", () => {
    const held = Object.fromEntries(
      fittingCoefficients.definition.rows.map(({ fitting, coefficient }) => [fitting, coefficient]),
    );
    expect(held).toEqual(printed);
  });

  it("gives coefficients that enter a formula, by exact name", () => {
    expect(fittingCoefficients.get("exit", "coefficient").kind).toBe("coefficient");
    expect(() => fittingCoefficients.row("elbow" as never)).toThrow(
      "fitting-coefficients: elbow is not in the table; it has globe valve, fully open,",
    );
  });

  it("loses less in a wider bend and in a shorter way through a tee", () => {
    const k = (name: Parameters<typeof fittingCoefficients.row>[0]): number =>
      fittingCoefficients.row(name).coefficient;
    expect(k("short-radius elbow")).toBeGreaterThan(k("medium-radius elbow"));
    expect(k("medium-radius elbow")).toBeGreaterThan(k("long-radius elbow"));
    expect(k("long-radius elbow")).toBeGreaterThan(k("45 degree elbow"));
    expect(k("standard tee, flow through branch")).toBeGreaterThan(
      k("standard tee, flow through run"),
    );
    expect(k("globe valve, fully open")).toBeGreaterThan(k("gate valve, fully open"));
  });
});
