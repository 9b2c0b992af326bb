import type { Point, Quantity } from "@leat/quantity";

// A survey is what was measured, stated or chosen, as it was written. What it leaves out stays absent:
// assumptions are made, and listed, when a scheme is made of it.

/** A whole survey. */
export interface Survey {
  /** Names the survey in the ids of its sources of uncertainty. */
  readonly id: string;
  /** The site. */
  readonly site: SiteSurvey;
  /** The water there is, and what stays in the stream. */
  readonly stream: StreamSurvey;
  /** The fall from the intake's water level to the nozzles. */
  readonly fall: FallSurvey;
  /** Pipe, from the intake down. */
  readonly reaches: readonly ReachSurvey[];
  /** Nozzles. */
  readonly jets: JetsSurvey;
  /** Runner. */
  readonly wheel: WheelSurvey;
  /** Alternator and rectifier. */
  readonly machine: MachineSurvey;
  /** Cable up the hill. */
  readonly cable: CableSurvey;
  /** Battery bank. */
  readonly bank: BankSurvey;
  /** Where surplus goes. */
  readonly divert: DivertSurvey;
}

/** Where it is. */
export interface SiteSurvey {
  /** What people call it. */
  readonly name?: string;
  /** Latitude, for gravity. */
  readonly latitude?: Quantity<"angle">;
  /** Height over sea level, for gravity. */
  readonly elevation?: Quantity<"length">;
  /** Temperature of the water. */
  readonly waterTemperature?: Point<"absolute zero">;
}

/** The flow, by one way of measuring, and what must stay. */
export interface StreamSurvey {
  /** Stated, without saying how it was measured. */
  readonly flow?: Quantity<"volume flow">;
  /** A thin-plate notch. */
  readonly notch?: NotchSurvey;
  /** Fillings of a vessel. */
  readonly bucket?: readonly {
    readonly volume: Quantity<"volume">;
    readonly time: Quantity<"time">;
  }[];
  /** What stays: a flow, or a share of the measured flow. */
  readonly leave?: Quantity<"volume flow"> | Quantity<"ratio">;
}

/** A reading over a thin-plate notch. */
export interface NotchSurvey {
  /** Shape of the opening. */
  readonly shape: "V" | "rectangular";
  /** Level over the vertex or the sill. */
  readonly head: Quantity<"length">;
  /** Full angle of a V. */
  readonly angle?: Quantity<"angle">;
  /** Width of a rectangular opening. */
  readonly width?: Quantity<"length">;
  /** Vertex or sill over the bed. */
  readonly sill?: Quantity<"length">;
  /** Width of the channel of approach. */
  readonly channel?: Quantity<"length">;
}

/** The fall, by one way of measuring. */
export interface FallSurvey {
  /** Stated or levelled. */
  readonly gross?: Quantity<"length">;
  /** A gauge at the bottom of a full, closed hose. */
  readonly gauge?: Quantity<"pressure">;
  /** Gauge above the nozzles. */
  readonly gaugeAbove?: Quantity<"length">;
}

/** One reach of pipe. */
export interface ReachSurvey {
  /** The pipe as it is sold. */
  readonly pipe?: string;
  /** Bore, where it is known better than by the name of the pipe. */
  readonly bore?: Quantity<"length">;
  /** Roughness, where it is known better. */
  readonly roughness?: Quantity<"length">;
  /** Length along the pipe. */
  readonly length: Quantity<"length">;
  /** Fittings: loss coefficient of each, and how many. */
  readonly fittings?: readonly {
    readonly what?: string;
    readonly k?: Quantity<"coefficient">;
    readonly count: number;
  }[];
}

/** Nozzles. */
export interface JetsSurvey {
  /** Diameter of each that is open. */
  readonly nozzles?: readonly Quantity<"length">[];
  /** How many, where no diameters are given. */
  readonly count?: number;
  /** Discharge coefficient. */
  readonly coefficient?: Quantity<"coefficient">;
  /** Velocity coefficient. */
  readonly velocityCoefficient?: Quantity<"coefficient">;
}

/** Runner. */
export interface WheelSurvey {
  /** Shaft power over jet power. */
  readonly efficiency?: Quantity<"efficiency">;
  /** Pitch diameter. */
  readonly diameter?: Quantity<"length">;
  /** Speed of the pitch circle over the speed of the jet. */
  readonly speedRatio?: Quantity<"ratio">;
}

/** Alternator and rectifier. */
export interface MachineSurvey {
  /** Direct-current power over shaft power. */
  readonly efficiency?: Quantity<"efficiency">;
}

/** Cable. */
export interface CableSurvey {
  /** One way. */
  readonly length: Quantity<"length">;
  /** Size, as it is written. */
  readonly size?: string;
  /** Metal. */
  readonly metal?: "copper" | "aluminium";
  /** Temperature of the conductor. */
  readonly temperature?: Point<"absolute zero">;
}

/** Battery bank. */
export interface BankSurvey {
  /** Nominal volts. */
  readonly volts: Quantity<"voltage">;
  /** Volts while it is charged. */
  readonly charging?: Quantity<"voltage">;
  /** What it is made of. */
  readonly chemistry?: "flooded lead-acid" | "sealed lead-acid" | "lithium iron phosphate";
}

/** Diversion. */
export interface DivertSurvey {
  /** Added to what must go somewhere, as a share. */
  readonly margin?: Quantity<"ratio">;
  /** Volts at which it is switched in. */
  readonly volts?: Quantity<"voltage">;
  /** The element as it is sold. */
  readonly element?: { readonly power: Quantity<"power">; readonly volts: Quantity<"voltage"> };
  /** Water in the tank. */
  readonly tank?: Quantity<"volume">;
  /** A second, independent path, in words. */
  readonly second?: string;
}
