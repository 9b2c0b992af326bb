import type { Notice } from "@leat/formula";
import type { Pipe } from "@leat/pipe-sizes";
import type { Point, Quantity } from "@leat/quantity";

/** A point of the ground, or of the bed that the pipe lies on. */
export interface StationInput {
  /** Distance from the first station, along the ground or across the map. */
  readonly chainage: Quantity<"length">;
  /** Height of the pipe's middle line there. */
  readonly elevation: Point<"site datum">;
  /** What the place is called. */
  readonly name?: string | undefined;
}

/** A fitting, or many of one sort. */
export interface FittingInput {
  /** What it is. */
  readonly name?: string | undefined;
  /** Loss coefficient on the velocity head in the bore of its reach; negative where a tee gives head back. */
  readonly coefficient: Quantity<"coefficient">;
  /** How many; 1 by default. */
  readonly count?: number | undefined;
  /** Chainage where it stands; without one it is spread along the reach, as joints are. */
  readonly at?: Quantity<"length"> | undefined;
}

/** A length of one pipe. */
export interface ReachInput {
  /** What it is called. */
  readonly name?: string | undefined;
  /** The pipe. */
  readonly pipe: Pipe;
  /** Chainage where it ends; the last reach ends at the last station. */
  readonly to?: Quantity<"length"> | undefined;
  /** Length of pipe that is there, where it is more than the ground: pipe that snakes, or that was counted in sticks. */
  readonly length?: Quantity<"pipe length"> | undefined;
  /** Its fittings. */
  readonly fittings?: readonly FittingInput[] | undefined;
}

/** A stretch that lies in one way. */
export interface StretchInput {
  /** Chainage where it begins. */
  readonly from: Quantity<"length">;
  /** Chainage where it ends. */
  readonly to: Quantity<"length">;
  /** How it lies. */
  readonly laid: "buried" | "exposed";
  /** Warmest that the pipe gets there. */
  readonly warmest?: Point<"absolute zero"> | undefined;
  /** Coldest that the pipe gets there. */
  readonly coldest?: Point<"absolute zero"> | undefined;
}

/** What a profile is made of. */
export interface ProfileInput {
  /** Stations, from the intake down. */
  readonly stations: readonly StationInput[];
  /** Whether chainages were taped along the slope or scaled off a map. */
  readonly measured: "along the slope" | "across the map";
  /** Reaches of pipe, from the intake down. */
  readonly reaches: readonly ReachInput[];
  /** How the pipe lies, where it is known. */
  readonly stretches?: readonly StretchInput[] | undefined;
  /** How deep a hump or a dip must be to count; the narrowest bore by default. */
  readonly turnDepth?: Quantity<"length"> | undefined;
}

/** A place along the pipe. */
export interface ProfileStation {
  /** What it is called. */
  readonly name: string | undefined;
  /** Its row among the stations of the input; none where a reach ends, or a fitting stands, between two. */
  readonly row: number | undefined;
  /** As it was given, or worked out between two stations. */
  readonly chainage: Quantity<"length">;
  /** Length of pipe from the intake to it. */
  readonly distance: Quantity<"pipe length">;
  /** Height of the pipe's middle line. */
  readonly elevation: Point<"site datum">;
  /** How steeply the pipe goes down from here to the next place, negative where it goes up; the last has none. */
  readonly downSlope: Quantity<"angle"> | undefined;
}

/** A fitting in its place. */
export interface ProfileFitting {
  /** What it is. */
  readonly name: string;
  /** Coefficient of all of them together, on the velocity head in this bore. */
  readonly coefficient: Quantity<"coefficient">;
  /** Place of it among the stations; none where it is spread along the reach. */
  readonly station: number | undefined;
}

/** A reach in its place. */
export interface ProfileReach {
  /** What it is called. */
  readonly name: string;
  /** The pipe. */
  readonly pipe: Pipe;
  /** Where it begins, among the stations. */
  readonly first: number;
  /** Where it ends, among the stations. */
  readonly last: number;
  /** Length of its pipe. */
  readonly length: Quantity<"pipe length">;
  /** Its fittings, from the intake down, those that are spread along it first. */
  readonly fittings: readonly ProfileFitting[];
}

/** A stretch in its place. */
export interface ProfileStretch {
  /** How it lies. */
  readonly laid: "buried" | "exposed";
  /** Length of pipe from the intake to its beginning. */
  readonly from: Quantity<"pipe length">;
  /** Length of pipe from the intake to its end. */
  readonly to: Quantity<"pipe length">;
  /** Warmest that the pipe gets there. */
  readonly warmest: Point<"absolute zero"> | undefined;
  /** Coldest that the pipe gets there. */
  readonly coldest: Point<"absolute zero"> | undefined;
}

/** A pipe down a hillside, worked out. */
export interface Profile {
  /** Stations that were given, and between them ends of reaches and places of fittings. */
  readonly stations: readonly ProfileStation[];
  /** Reaches. */
  readonly reaches: readonly ProfileReach[];
  /** How the pipe lies. */
  readonly stretches: readonly ProfileStretch[];
  /** Length of all pipe. */
  readonly length: Quantity<"pipe length">;
  /** High points, by their place among the stations: where air gathers. */
  readonly highPoints: readonly number[];
  /** Low points, by their place among the stations: where silt and frost find water. */
  readonly lowPoints: readonly number[];
  /** How deep a turn counts. */
  readonly turnDepth: Quantity<"length">;
  /** What is to be said of it. */
  readonly notices: readonly Notice[];
}
