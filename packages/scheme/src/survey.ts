import type {
  FloatBed,
  GaugeAccuracy,
  LevelInstrument,
  SatelliteReceiver,
} from "@leat/flow-measurement";
import type { Notice } from "@leat/formula";
import type { TennantCondition } from "@leat/hydrology";
import type { Point, Quantity } from "@leat/quantity";
import type { Column } from "@leat/quantity/column";

// A survey is what was measured, stated or chosen, as it was written. What it leaves out stays absent:
// assumptions are made, and listed, when a scheme is made of it.

/** What was measured, before anything is chosen. */
export interface FieldSurvey {
  /** Names the survey in the ids of its sources of uncertainty. */
  readonly id: string;
  /** The site. */
  readonly site: SiteSurvey;
  /** The water there is, and what stays in the stream. */
  readonly stream: StreamSurvey;
  /** The fall from the intake's water level to the nozzles. */
  readonly fall?: FallSurvey;
}

/** A whole survey. */
export interface Survey extends FieldSurvey {
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

/** The water there is, and what must stay. */
export interface StreamSurvey {
  /** Measurements of the flow. */
  readonly measured: readonly FlowSurvey[];
  /** Whether they stand in a list of their own, or one straight under the stream. */
  readonly listed: boolean;
  /** What stays: a flow, a share of the measured flow, or rules. */
  readonly leave?: Quantity<"volume flow"> | Quantity<"ratio"> | LeaveSurvey;
  /** The board that flows are read off. */
  readonly board?: BoardSurvey;
  /** Daily flows of the stream itself. */
  readonly record?: RecordSurvey;
  /** A stream near by that has a gauge. */
  readonly gauged?: GaugedSurvey;
  /** Area that drains to the intake. */
  readonly area?: Quantity<"area">;
  /** Mean runoff of that area. */
  readonly runoff?: Quantity<"runoff">;
  /** Month, 1 to 12, that a year of low flows begins with. */
  readonly yearFrom?: number;
  /** Flows that a scheme might be built for. */
  readonly builtFor?: readonly Quantity<"volume flow">[];
}

/** Rules for what must stay; each that is given holds, and the greatest decides. */
export interface LeaveSurvey {
  /** A flow. */
  readonly flow?: Quantity<"volume flow">;
  /** A share of the mean flow. */
  readonly shareOfMean?: Quantity<"ratio">;
  /** The flow that is exceeded for this share of the time. */
  readonly exceeded?: Quantity<"ratio">;
  /** The same, month by month. */
  readonly exceededByMonth?: Quantity<"ratio">;
  /** Tennant's condition of the stream. */
  readonly tennant?: TennantCondition;
  /** Months in which the stream is low, for Tennant. */
  readonly lowMonths?: readonly number[];
  /** Below this nothing is taken. */
  readonly handsOff?: Quantity<"volume flow">;
  /** Share of what is above it that may be taken. */
  readonly takeAbove?: Quantity<"ratio">;
  /** A flow for each month, January first. */
  readonly months?: readonly Quantity<"volume flow">[];
  /** Seasons in which fish pass, and the flow that they need. */
  readonly fish?: readonly {
    readonly from: string;
    readonly to: string;
    readonly flow: Quantity<"volume flow">;
  }[];
  /** Most that may be taken. */
  readonly most?: Quantity<"volume flow">;
}

/** Daily flows, as a gauge recorded them. */
export interface RecordSurvey {
  /** The flows, a row for each day. */
  readonly flow: Column<"volume flow">;
  /** What reading the file had to say. */
  readonly notes: readonly Notice[];
}

/** A stream near by that has a gauge. */
export interface GaugedSurvey {
  /** What people call it. */
  readonly name?: string;
  /** Its daily flows. */
  readonly record: RecordSurvey;
  /** Area that drains to the gauge. */
  readonly area?: Quantity<"area">;
  /** Mean runoff of that area. */
  readonly runoff?: Quantity<"runoff">;
}

/** One measurement of the flow, in one of the ways. */
export interface FlowSurvey {
  /** What people call it. */
  readonly name?: string;
  /** The day: `2026-08-14`. */
  readonly on?: string;
  /** Stated, without saying how it was measured. */
  readonly flow?: Quantity<"volume flow">;
  /** A thin-plate notch. */
  readonly notch?: NotchSurvey;
  /** A broad crest. */
  readonly crest?: CrestSurvey;
  /** Floats over a stretch of the stream. */
  readonly floats?: FloatsSurvey;
  /** A meter held in verticals across the stream. */
  readonly meter?: MeterSurvey;
  /** Salt thrown in at once. */
  readonly salt?: SaltSurvey;
  /** Salt solution fed in at a steady rate. */
  readonly saltFeed?: SaltFeedSurvey;
  /** Nozzles that were running, read as a meter. */
  readonly nozzles?: NozzlesSurvey;
  /** A staff with a rating. */
  readonly staff?: StaffSurvey;
  /** Fillings of a vessel. */
  readonly bucket?: readonly {
    readonly volume: Quantity<"volume">;
    readonly time: Quantity<"time">;
  }[];
  /** What went past the place that was measured. */
  readonly leaks?: Quantity<"volume flow">;
}

/** A thin plate with an opening that water flows through. */
export interface OpeningSurvey {
  /** Shape of the opening; a trapezoidal one has sides of one across to four up. */
  readonly shape: "V" | "rectangular" | "trapezoidal";
  /** Full angle of a V. */
  readonly angle?: Quantity<"angle">;
  /** Width of any other, at the sill. */
  readonly width?: Quantity<"length">;
  /** Vertex or sill over the bed. */
  readonly sill?: Quantity<"length">;
  /** Width of the channel of approach. */
  readonly channel?: Quantity<"length">;
}

/** A reading over a thin-plate notch. */
export interface NotchSurvey extends OpeningSurvey {
  /** Level over the vertex or the sill. */
  readonly head: Quantity<"length">;
  /** Level of the tail water over the sill, where it stands above it. */
  readonly tailWater?: Quantity<"length">;
}

/** The board that flows are read off, beside a weir. */
export interface BoardSurvey extends OpeningSurvey {
  /** Vertex or sill over the bed. */
  readonly sill: Quantity<"length">;
  /** Width of the channel of approach. */
  readonly channel: Quantity<"length">;
  /** Lowest mark. */
  readonly from: Quantity<"length">;
  /** Highest mark. */
  readonly to: Quantity<"length">;
  /** Division of the ruler. */
  readonly division: Quantity<"length">;
}

/** A reading over a broad crest between upright walls. */
export interface CrestSurvey {
  /** Level over the crest. */
  readonly head: Quantity<"length">;
  /** Width across the flow. */
  readonly width: Quantity<"length">;
  /** Length along the flow. */
  readonly length: Quantity<"length">;
  /** Crest over the bed of the channel. */
  readonly sill: Quantity<"length">;
  /** Level of the tail water over the crest, where it stands above it. */
  readonly tailWater?: Quantity<"length">;
}

/** Floats timed over a stretch. */
export interface FloatsSurvey {
  /** Length that they were timed over. */
  readonly stretch: Quantity<"length">;
  /** Time of each. */
  readonly times: readonly Quantity<"time">[];
  /** Cross-sections of the stretch. */
  readonly sections: readonly {
    readonly area?: Quantity<"area">;
    readonly width?: Quantity<"length">;
    readonly depths?: readonly Quantity<"length">[];
  }[];
  /** Mean velocity over that of the floats. */
  readonly coefficient?: Quantity<"coefficient">;
  /** What the bed is like, where no coefficient is given. */
  readonly bed?: FloatBed;
  /** Average depth, where neither is given. */
  readonly depth?: Quantity<"length">;
}

/** A gauging by meter and rod. */
export interface MeterSurvey {
  /** The two edges of the water. */
  readonly edges: readonly {
    readonly at: Quantity<"length">;
    readonly depth?: Quantity<"length">;
    readonly share?: Quantity<"coefficient">;
  }[];
  /** Verticals between them. */
  readonly verticals: readonly {
    readonly at: Quantity<"length">;
    readonly depth: Quantity<"length">;
    readonly surface?: Quantity<"velocity">;
    readonly twoTenths?: Quantity<"velocity">;
    readonly sixTenths?: Quantity<"velocity">;
    readonly eightTenths?: Quantity<"velocity">;
  }[];
  /** How long the meter was held at each point. */
  readonly exposure?: Quantity<"time">;
  /** Whether the meter has a rating of its own, or that of its make. */
  readonly rating?: "individual" | "group";
}

/** What a logger of conductivity wrote, its faults still in it. */
export interface LoggedSurvey {
  /** Names the probe. */
  readonly name?: string;
  /** Seconds of the rows. */
  readonly seconds: Float64Array;
  /** The readings. */
  readonly conductivity: Column<"conductivity">;
  /** Temperature of the water beside each, in °C. */
  readonly celsius?: readonly (number | null)[];
  /** The line of its file that each row stands on, from 1, where there is a file. */
  readonly lines?: Uint32Array;
  /** Whether the meter brings what it finds to 25 °C. */
  readonly reads: "raw" | "compensated";
  /** What reading the file had to say. */
  readonly notes: readonly Notice[];
}

/** A calibration of a probe with salt solution. */
export interface SaltCalibrationSurvey {
  /** The file of the readings. */
  readonly file?: string;
  /** Stream water at the beginning. */
  readonly water: Quantity<"volume">;
  /** Salt in the solution. */
  readonly solution: Quantity<"density">;
  /** What the solution was made with. */
  readonly madeWith: "stream water" | "distilled water";
  /** The readings, the first of the water itself. */
  readonly readings: readonly {
    readonly added: Quantity<"volume">;
    readonly conductivity: Quantity<"conductivity">;
    readonly temperature?: Point<"absolute zero">;
    /** The line of its file, from 1. */
    readonly line?: number;
  }[];
}

/** Salt thrown in at once. */
export interface SaltSurvey {
  /** How much. */
  readonly mass: Quantity<"mass">;
  /** What each probe saw: one, or one a bank. */
  readonly probes: readonly LoggedSurvey[];
  /** Calibration of the probes. */
  readonly calibration?: SaltCalibrationSurvey;
  /** Temperature of the water, where the loggers did not write it. */
  readonly temperature?: Point<"absolute zero">;
  /** What is summed, in the times of the record. */
  readonly window?: SpanSurvey;
  /** Where the background is read. */
  readonly background?: SpanSurvey;
}

/** Salt solution fed in at a steady rate. */
export interface SaltFeedSurvey extends Omit<SaltSurvey, "mass" | "window"> {
  /** Flow of the solution. */
  readonly rate: Quantity<"volume flow">;
  /** Salt in the solution. */
  readonly solution: Quantity<"density">;
  /** Where the plateau is read. */
  readonly plateau?: SpanSurvey;
}

/** From a time to a time. */
export interface SpanSurvey {
  /** Where it begins. */
  readonly from: Quantity<"time">;
  /** Where it ends. */
  readonly to: Quantity<"time">;
}

/** Nozzles that were running, and the gauge before them. */
export interface NozzlesSurvey {
  /** The gauge. */
  readonly gauge: Quantity<"pressure">;
  /** Its height over the nozzles. */
  readonly gaugeAboveNozzles?: Quantity<"length">;
  /** Bore of each nozzle that was open. */
  readonly open: readonly Quantity<"length">[];
  /** Bore of the pipe where the gauge sits. */
  readonly bore: Quantity<"length">;
  /** Discharge coefficient. */
  readonly coefficient?: Quantity<"coefficient">;
}

/** A staff in the stream, and the flows that were measured at its readings. */
export interface StaffSurvey {
  /** What each reader read. */
  readonly readings: readonly Quantity<"length">[];
  /** Smallest division of the staff. */
  readonly division: Quantity<"length">;
  /** The staff's own error. */
  readonly calibration?: Quantity<"length">;
  /** Flows and stages, three or more. */
  readonly gaugings: readonly {
    readonly on?: string;
    readonly stage: Quantity<"length">;
    readonly flow: Quantity<"volume flow">;
  }[];
  /** Stage of zero flow, where it was levelled. */
  readonly zero?: Quantity<"length">;
  /** What reading a file of gaugings had to say. */
  readonly notes?: readonly Notice[];
}

/** The fall. */
export interface FallSurvey {
  /** Measurements of the fall. */
  readonly measured: readonly HeadSurvey[];
  /** Whether they stand in a list of their own, or one straight under the fall. */
  readonly listed: boolean;
}

/** One measurement of the fall, in one of the ways. */
export interface HeadSurvey extends MarksSurvey {
  /** What people call it. */
  readonly name?: string;
  /** Stated or levelled. */
  readonly gross?: Quantity<"length">;
  /** A gauge at the bottom of a full, closed hose. */
  readonly gauge?: Quantity<"pressure">;
  /** Gauge above the nozzles. */
  readonly gaugeAboveNozzles?: Quantity<"length">;
  /** Full scale of the gauge. */
  readonly fullScale?: Quantity<"pressure">;
  /** Class or grade on its dial. */
  readonly class?: GaugeAccuracy;
  /** What it shows open to the air. */
  readonly gaugeZero?: Quantity<"pressure">;
  /** Level and rod. */
  readonly levels?: LevelsSurvey;
  /** A hose full of water, step by step. */
  readonly hose?: StepsSurvey;
  /** A plank and a spirit level, step by step. */
  readonly plank?: StepsSurvey;
  /** A barometer at both ends. */
  readonly barometer?: AirSurvey<"pressure">;
  /** An altimeter at both ends. */
  readonly altimeter?: AirSurvey<"altitude">;
  /** A satellite receiver at both ends. */
  readonly satellite?: SatelliteSurvey;
  /** Contours of a map. */
  readonly map?: MapSurvey;
}

/** What lies between the marks that were measured and water and nozzle. */
export interface MarksSurvey {
  /** Water level of the intake above the upper mark. */
  readonly waterAboveUpperMark?: Quantity<"length">;
  /** Nozzles above the lower mark. */
  readonly nozzlesAboveLowerMark?: Quantity<"length">;
  /** Tail water above the lower mark. */
  readonly tailWaterAboveLowerMark?: Quantity<"length">;
  /** Highest flood mark above the lower mark. */
  readonly floodAboveLowerMark?: Quantity<"length">;
}

/** A line of levels. */
export interface LevelsSurvey {
  /** What it was levelled with. */
  readonly instrument: LevelInstrument;
  /** Set-ups from the first mark to the last. */
  readonly out: readonly LevelSetupSurvey[];
  /** Set-ups back to the first mark. */
  readonly returning?: readonly LevelSetupSurvey[];
  /** What it may close within. */
  readonly closing?: Quantity<"length">;
  /** Length of the rod. */
  readonly rod?: Quantity<"length">;
}

/** One set-up of the level. */
export interface LevelSetupSurvey {
  /** Rod on the mark behind. */
  readonly back: Quantity<"length">;
  /** Rod on the mark ahead. */
  readonly fore: Quantity<"length">;
  /** Both sights together. */
  readonly distance?: Quantity<"length">;
  /** What the mark ahead is called. */
  readonly at?: string;
}

/** A fall taken step by step. */
export interface StepsSurvey {
  /** Drop of each step. */
  readonly steps: readonly Quantity<"length">[];
  /** The same way once more. */
  readonly again?: readonly Quantity<"length">[];
}

/** Readings of the air's weight at both ends. */
export interface AirSurvey<K extends "pressure" | "altitude"> {
  /** At the intake. */
  readonly upper: AirReadingSurvey<K>;
  /** At the nozzles. */
  readonly lower: AirReadingSurvey<K>;
  /** Once more where the first was taken. */
  readonly again?: AirReadingSurvey<K>;
  /** Temperature of the air. */
  readonly air: Point<"absolute zero">;
  /** Smallest step that the instrument shows. */
  readonly division: Quantity<K extends "pressure" ? "pressure" : "length">;
}

/** One reading of the air's weight. */
export interface AirReadingSurvey<K extends "pressure" | "altitude"> {
  /** When. */
  readonly time: Quantity<"time">;
  /** What was read. */
  readonly reads: Quantity<K extends "pressure" ? "pressure" : "length">;
}

/** Heights by satellite. */
export interface SatelliteSurvey {
  /** At the intake. */
  readonly upper: Quantity<"length">;
  /** At the nozzles. */
  readonly lower: Quantity<"length">;
  /** Kind of receiver. */
  readonly receiver: SatelliteReceiver;
  /** How far the two are apart on a map. */
  readonly apart?: Quantity<"length">;
}

/** Heights by the contours of a map. */
export interface MapSurvey {
  /** At the intake. */
  readonly upper: Quantity<"length">;
  /** At the nozzles. */
  readonly lower: Quantity<"length">;
  /** From one contour to the next. */
  readonly interval: Quantity<"length">;
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
