import type { Notice } from "@leat/formula";
import type { Point, Quantity } from "@leat/quantity";

import type { Profile } from "../profile/profile.ts";

/** What a grade line is drawn of. */
export interface GradeLineInput {
  /** The pipe on its hillside. */
  readonly profile: Profile;
  /** Flow through it; 0 at rest. */
  readonly flow: Quantity<"volume flow">;
  /** Water level at the intake, over the datum of the profile. */
  readonly water: Point<"site datum">;
  /** Temperature of the water. */
  readonly temperature: Point<"absolute zero">;
  /** Pressure of the air at the site: `standardAtmosphere` of the package water gives it by elevation. */
  readonly atmosphere: Point<"vacuum">;
  /** Gravity at the site; standard by default. */
  readonly gravity?: Quantity<"acceleration"> | undefined;
  /** Whether the pipe is filled by a pump before it runs, so that it may go over the water level; false by default. */
  readonly primed?: boolean | undefined;
}

/** A place on the pipe, and what the water does there. Where something takes head in one place, there are two of them. */
export interface GradePoint {
  /** Place among the stations of the profile. */
  readonly station: number;
  /** The reach that it is in. */
  readonly reach: number;
  /** Length of pipe from the intake to it. */
  readonly distance: Quantity<"pipe length">;
  /** Head lost from the water at the intake to here. */
  readonly lost: Quantity<"head loss">;
  /** Height of the energy line: the water level less what is lost. */
  readonly energy: Point<"site datum">;
  /** Height of the grade line: how high water would stand in a tube on the pipe. */
  readonly grade: Point<"site datum">;
  /** Water level above the pipe: negative where the pipe lies over it. */
  readonly staticHead: Quantity<"length">;
  /** Grade line above the pipe: negative where the pipe sucks. */
  readonly runningHead: Quantity<"length">;
  /** Pressure over that of the air, at rest. */
  readonly restPressure: Quantity<"pressure">;
  /** Pressure over that of the air, running: what a gauge there reads. */
  readonly runningPressure: Quantity<"pressure">;
  /** Running pressure over that of the water's own vapour: at 0 it boils. */
  readonly overVapour: Quantity<"pressure">;
}

/** What a reach loses. */
export interface ReachLoss {
  /** Head lost to the wall. */
  readonly friction: Quantity<"head loss">;
  /** Head lost to the fittings; negative where they give some back. */
  readonly fittings: Quantity<"head loss">;
  /** Mean velocity. */
  readonly velocity: Quantity<"velocity">;
  /** Reynolds number. */
  readonly reynolds: Quantity<"ratio">;
  /** How the water flows. */
  readonly regime: "at rest" | "laminar" | "in transition" | "turbulent";
}

/** What a reach must hold. */
export interface ReachPressure {
  /** Greatest pressure over that of the air, at rest. */
  readonly atRest: Quantity<"pressure">;
  /** Greatest pressure over that of the air, running. */
  readonly running: Quantity<"pressure">;
  /** Least pressure over that of the air, running. */
  readonly least: Quantity<"pressure">;
  /** Warmest that the pipe gets. */
  readonly temperature: Point<"absolute zero">;
  /** Share of its rating that it keeps so warm; absent where nobody says. */
  readonly factor: Quantity<"ratio"> | undefined;
  /** Pressure that it carries so warm; absent where its maker states none. */
  readonly rating: Quantity<"pressure"> | undefined;
  /** Class that a pipe needs: rating at its own temperature that is as much as the pressure at rest takes, without surge. */
  readonly needs: Quantity<"pressure"> | undefined;
  /** What is left of the rating over the pressure at rest, for surge. */
  readonly margin: Quantity<"pressure"> | undefined;
}

/** A place for an air valve. */
export interface AirValve {
  /** Place among the stations of the profile. */
  readonly station: number;
  /** Velocity that would carry air on down the slope behind it. */
  readonly clearing: Quantity<"velocity">;
  /** Whether the flow does: then the valve lets air out while the pipe fills and in while it drains, and none gathers. */
  readonly swept: boolean;
}

/** A grade line, worked out. */
export interface GradeLine {
  /** Places from the intake down. */
  readonly points: readonly GradePoint[];
  /** What each reach loses. */
  readonly losses: readonly ReachLoss[];
  /** What each reach must hold. */
  readonly pressures: readonly ReachPressure[];
  /** Water at the intake above the end of the pipe. */
  readonly grossHead: Quantity<"gross head">;
  /** Head lost in all. */
  readonly lost: Quantity<"head loss">;
  /** Total head that is left before the nozzle. */
  readonly netHead: Quantity<"net head">;
  /** Where air valves go, from the intake down. */
  readonly airValves: readonly AirValve[];
  /** Where drains go, by place among the stations: low points, and the end of the pipe. */
  readonly drains: readonly number[];
  /** What is to be said of it, the gravest first. */
  readonly notices: readonly Notice[];
}
