import type { Notice } from "@leat/formula";
import type { Pipe } from "@leat/pipe-sizes";
import type { Point, Quantity } from "@leat/quantity";

import type { FittingInput } from "../profile/profile.ts";

/** A hose, or another pipe of which nothing but bore and wall is known. */
export interface Hose {
  /** Bore. */
  readonly insideDiameter: Quantity<"length">;
  /** Absolute roughness of the wall. */
  readonly roughness: Quantity<"length">;
}

/** A length of one pipe, from where water comes in to where it goes out. A reach of a profile is one. */
export interface ManifoldPipe {
  /** What it is called. */
  readonly name?: string | undefined;
  /** The pipe, with the spread of its bore and its wall; or a hose, with the spread that it is given. */
  readonly pipe: Pipe | Hose;
  /** Length along it; 0 where a nozzle sits on the fitting itself. */
  readonly length: Quantity<"pipe length">;
  /** Its fittings, the way in from the pipe before it among them. A tee may give head back, but not more than the others take. */
  readonly fittings?: readonly Omit<FittingInput, "at">[] | undefined;
  /** The valve in it. */
  readonly valve?:
    | {
        /** Loss coefficient as it stands open. */
        readonly coefficient: Quantity<"coefficient">;
        /** Whether it is shut, and with it every jet that it feeds; false by default. */
        readonly shut?: boolean | undefined;
      }
    | undefined;
}

/** A nozzle at the end of a branch. */
export interface ManifoldNozzle {
  /** What it is called. */
  readonly name?: string | undefined;
  /** Diameter of the opening. */
  readonly diameter: Quantity<"length">;
  /** Flow over that of the opening without loss or contraction. */
  readonly dischargeCoefficient: Quantity<"coefficient">;
  /** Velocity of the jet over that without loss. */
  readonly velocityCoefficient: Quantity<"coefficient">;
  /** Height of the jet. */
  readonly elevation: Point<"site datum">;
}

/** A branch: a pipe or a hose that ends in a nozzle, or in more branches. */
export interface ManifoldBranch extends ManifoldPipe {
  /** The nozzle at its end. */
  readonly nozzle?: ManifoldNozzle | undefined;
  /** The branches at its end. */
  readonly branches?: readonly ManifoldBranch[] | undefined;
}

/** A penstock with all that hangs on its end. */
export interface Manifold {
  /** Water level at the intake. */
  readonly water: Point<"site datum">;
  /** Reaches in series, from the intake down. */
  readonly reaches: readonly ManifoldPipe[];
  /** What hangs on the end of the last reach. */
  readonly branches: readonly ManifoldBranch[];
  /** Level of the tail water; that of the lowest jet by default, below which nothing then counts as lost. */
  readonly tailWater?: Point<"site datum"> | undefined;
  /** Height of the gauge at the end of the last reach, before the branches; that of the first jet by default. */
  readonly gauge?: Point<"site datum"> | undefined;
  /** Temperature of the water. */
  readonly temperature: Point<"absolute zero">;
  /** Gravity at the site; standard by default. */
  readonly gravity?: Quantity<"acceleration"> | undefined;
}

/** Which jets run, and on what water. */
export interface ManifoldInput extends Manifold {
  /** Jets that are open, by their place in the order of the tree, from 0; all that no shut valve closes by default. */
  readonly open?: readonly number[] | undefined;
  /** Flow that may be taken from the stream; where the jets would pass more, the answer carries a stop. */
  readonly usable?: Quantity<"volume flow"> | undefined;
}

/** What a gauge reads, over the air there. */
export interface GaugeReading {
  /** With all jets shut. */
  readonly static: Quantity<"pressure">;
  /** With the open jets running: the velocity head in its pipe is not in it. */
  readonly running: Quantity<"pressure">;
}

/** A pipe while the jets run. */
export interface PipeState {
  /** Where it stands in the input. */
  readonly path: readonly (string | number)[];
  /** Flow. */
  readonly flow: Quantity<"volume flow">;
  /** Mean velocity. */
  readonly velocity: Quantity<"velocity">;
  /** Reynolds number. */
  readonly reynolds: Quantity<"ratio">;
  /** Head lost to the wall. */
  readonly friction: Quantity<"head loss">;
  /** Head lost in fittings. */
  readonly fittings: Quantity<"head loss">;
  /** Head lost in the valve. */
  readonly valve: Quantity<"head loss">;
  /** Total head at its lower end, above the tail water. */
  readonly totalHead: Quantity<"length">;
}

/** A jet, open or not. */
export interface JetState {
  /** Where its nozzle stands in the input. */
  readonly path: readonly (string | number)[];
  /** Whether it is open. */
  readonly open: boolean;
  /** The pipes that its water takes, from the intake, by their place among the pipes. */
  readonly pipes: readonly number[];
  /** Flow. */
  readonly flow: Quantity<"volume flow">;
  /** Total head before its nozzle, above the jet: what drives it, or stands behind it where it is shut. */
  readonly netHead: Quantity<"net head">;
  /** Velocity of the jet. */
  readonly velocity: Quantity<"velocity">;
  /** Diameter of the jet where it is narrowest. */
  readonly diameter: Quantity<"length">;
  /** Power of the jet. */
  readonly power: Quantity<"hydraulic power">;
  /** A gauge before the nozzle, as high as the jet. */
  readonly gauge: GaugeReading;
}

/** A loss with its name. */
export interface NamedLoss {
  /** What takes it. */
  readonly name: "friction" | "fittings" | "valve" | "nozzle" | "height above tail water";
  /** Where in the input it belongs. */
  readonly path: readonly (string | number)[];
  /** Head that it takes of the water that passes it. */
  readonly head: Quantity<"head loss">;
  /** Power that it takes. */
  readonly power: Quantity<"hydraulic power">;
}

/** Where the power of the water goes: each loss by a formula of its own, none as what is left over. */
export interface HeadAccount {
  /** Power of all flow over the fall to the tail water. */
  readonly gross: Quantity<"hydraulic power">;
  /** Losses, from the intake down. */
  readonly losses: readonly NamedLoss[];
  /** Power of all jets. */
  readonly jets: Quantity<"hydraulic power">;
}

/** A penstock with its jets, solved. */
export interface ManifoldState {
  /** Water at the intake above the tail water. */
  readonly grossHead: Quantity<"gross head">;
  /** All flow. */
  readonly flow: Quantity<"volume flow">;
  /** Net head of the jets, each weighted with its flow. */
  readonly netHead: Quantity<"net head">;
  /** The gauge before the branches. */
  readonly gauge: GaugeReading;
  /** Pipes: the reaches, then the branches in the order of the tree. */
  readonly pipes: readonly PipeState[];
  /** Jets in the order of the tree. */
  readonly jets: readonly JetState[];
  /** Where the power goes. */
  readonly account: HeadAccount;
  /** How well it is solved: passes, greatest head in m that a jet's path is off by, and between which flows in m³/s the answer lies. */
  readonly convergence: {
    readonly iterations: number;
    readonly residual: number;
    readonly bracket: readonly [number, number];
  };
  /** What is to be said of it, the gravest first. */
  readonly notices: readonly Notice[];
}
