import { type Citation, table } from "@leat/formula";
import { footPerSecond, inch, millimetre, percent, type Quantity } from "@leat/quantity";

import { californiaScreens, nmfsPumpIntake, nmfsSalmonid } from "../sources.ts";

/** Velocity before a screen on a pipe, where young salmon or trout may be: United States, federal. */
export const nmfsApproachVelocities = /* @__PURE__ */ table(() => ({
  id: "nmfs-approach-velocities",
  key: "cleaning",
  units: { approachVelocity: footPerSecond },
  source: nmfsPumpIntake.at("pump intake screen flow criteria"),
  rows: [
    { cleaning: "active", approachVelocity: 0.4, jurisdiction: "United States, federal" },
    { cleaning: "passive", approachVelocity: 0.2, jurisdiction: "United States, federal" },
  ],
}));

/** Widest openings where salmon fry may be: United States, federal. The one row prints inches, the other millimetres. */
export const nmfsOpenings = /* @__PURE__ */ table(() => ({
  id: "nmfs-openings",
  key: "material",
  units: { openingInch: inch, openingMillimetre: millimetre },
  source: nmfsSalmonid.at("sec. 11, as a later federal measure repeats it", "secondary"),
  rows: [
    { material: "woven wire or perforated plate", openingInch: 3 / 32, openingMillimetre: 2.38 },
    { material: "profile wire", openingInch: 0.0689, openingMillimetre: 1.75 },
  ],
}));

/** Least open share of a screen: United States, federal. */
export const nmfsOpenShare = /* @__PURE__ */ table(() => ({
  id: "nmfs-open-share",
  key: "screen",
  units: { openShare: percent },
  source: nmfsSalmonid.at("sec. 11", "memory"),
  rows: [{ screen: "any", openShare: 27, jurisdiction: "United States, federal" }],
}));

/** Velocity before a screen: California. */
export const californiaApproachVelocities = /* @__PURE__ */ table(() => ({
  id: "california-approach-velocities",
  key: "water",
  units: { approachVelocity: footPerSecond },
  source: californiaScreens.at("screens in rivers and streams, worked example"),
  rows: [
    { water: "rivers and streams", approachVelocity: 0.33, jurisdiction: "California" },
    { water: "where delta smelt are", approachVelocity: 0.2, jurisdiction: "California" },
  ],
}));

/** What a fisheries agency asks of a screen. */
export interface FishCriterion {
  /** Where it holds. */
  readonly jurisdiction: string;
  /** Fastest water square to the screen, just before it. */
  readonly approachVelocity: Quantity<"velocity">;
  /** Widest opening, where it says so. */
  readonly opening?: Quantity<"length"> | undefined;
  /** Least open share, where it says so. */
  readonly openShare?: Quantity<"ratio"> | undefined;
  /** Who says so. */
  readonly source: Citation;
}

/**
 * What the US fisheries service asks of a screen on a pipe where salmon fry may be. A placeholder elsewhere: the
 * agency of the stream decides.
 *
 * @param of - Whether something cleans the screen as it runs, and what it is made of.
 * @returns The criterion.
 */
export function nmfsCriterion(of: {
  readonly cleaning: "active" | "passive";
  readonly material: "woven wire or perforated plate" | "profile wire";
}): FishCriterion {
  const { cleaning, material } = of;
  return {
    jurisdiction: "United States, federal",
    approachVelocity: nmfsApproachVelocities.get(cleaning, "approachVelocity"),
    opening: nmfsOpenings.get(material, "openingInch"),
    openShare: nmfsOpenShare.get("any", "openShare"),
    source: nmfsApproachVelocities.definition.source,
  };
}

/**
 * How slow California wants the water before a screen in a river or stream. Of openings and open share this says
 * nothing: see what the federal service asks.
 *
 * @param water - What water it stands in.
 * @returns The criterion.
 */
export function californiaCriterion(
  water: "rivers and streams" | "where delta smelt are",
): FishCriterion {
  return {
    jurisdiction: "California",
    approachVelocity: californiaApproachVelocities.get(water, "approachVelocity"),
    source: californiaApproachVelocities.definition.source,
  };
}
