import {
  floatCoefficientsByBed,
  gaugeClasses,
  gaugeGrades,
  levelSpreads,
  satelliteReceivers,
} from "@leat/flow-measurement";
import { monthNames, tennantShares } from "@leat/hydrology";
import * as z from "zod";

import { clock, date, field, monthDay, oneOf, temperature, words } from "./field.ts";
import { calibrationSpec, gaugingsSpec, recordSpec, seriesSpec } from "./table-schema.ts";

// The ways of measuring a flow and a fall, as they are written in a survey.

const flow = { kinds: ["volume flow"], example: "400 gal/min" };
const length = { kinds: ["length"], example: "900 ft" };

const time = (says: string, example: string): ReturnType<typeof field> =>
  field({ kinds: ["time"], says, example });
const height = (says: string, example: string): ReturnType<typeof field> =>
  field({ ...length, says, example, sign: "any" });

const readTo = field({
  ...length,
  says: "smallest division of the ruler that the head was read on",
  example: "1/8 in",
}).optional();

const tailWater = field({
  ...length,
  says: "level of the tail water over the sill, where it stands above it",
  example: "1 in",
  sign: "non-negative",
}).optional();

const opening = {
  shape: oneOf("shape of the opening", ["V", "rectangular", "trapezoidal"]),
  angle: field({
    kinds: ["angle"],
    says: "full angle of a V",
    example: "90°",
    between: { kind: "angle", least: "1°", most: "179°" },
  }).optional(),
  width: field({
    ...length,
    says: "width of any other opening, at its sill",
    example: "16 in",
  }).optional(),
  sill: field({
    ...length,
    says: "vertex or sill over the bed of the channel",
    example: "1 ft",
  }).optional(),
  channel: field({
    ...length,
    says: "width of the channel that brings the water",
    example: "5 ft",
  }).optional(),
};

const notch = z
  .strictObject({
    ...opening,
    head: field({
      ...length,
      says: "level over the vertex or the sill, read upstream of the drawdown",
      example: "3 1/2 in",
    }),
    "read to": readTo,
    "tail water": tailWater,
  })
  .meta({ description: "a reading over a thin-plate notch" });

const crest = z
  .strictObject({
    head: field({ ...length, says: "level over the crest, read upstream", example: "6 in" }),
    "read to": readTo,
    width: field({ ...length, says: "width of the crest across the flow", example: "4 ft" }),
    length: field({ ...length, says: "length of the crest along the flow", example: "18 in" }),
    sill: field({ ...length, says: "crest over the bed of the channel", example: "1 ft" }),
    "tail water": tailWater,
  })
  .meta({ description: "a reading over a broad crest between upright walls" });

const bucket = z
  .array(
    z.strictObject({
      volume: field({ kinds: ["volume"], says: "volume filled", example: "20 L" }),
      time: field({ kinds: ["time"], says: "time to fill it", example: "9.8 s" }),
    }),
  )
  .min(1)
  .meta({ description: "fillings of a vessel, one row each" });

const floats = z
  .strictObject({
    stretch: field({ ...length, says: "length that the floats were timed over", example: "40 ft" }),
    times: z
      .array(time("time of a float", "21 s"))
      .min(1)
      .meta({ description: "time of each float" }),
    sections: z
      .array(
        z.strictObject({
          area: field({
            kinds: ["area"],
            says: "area of the cross-section",
            example: "3.2 ft²",
          }).optional(),
          width: field({ ...length, says: "width of the water", example: "6 ft" }).optional(),
          depths: z
            .array(
              field({
                ...length,
                says: "a depth, at equal distances across",
                example: "5 in",
                sign: "non-negative",
              }),
            )
            .min(1)
            .optional(),
        }),
      )
      .min(1)
      .meta({ description: "cross-sections along the stretch" }),
    coefficient: field({
      kinds: ["coefficient"],
      says: "mean velocity over that of the floats",
      example: "0.7 ± 0.1",
      between: { kind: "coefficient", least: "0", most: "1" },
    }).optional(),
    bed: oneOf("what the bed is like, where no coefficient is given", [
      ...floatCoefficientsByBed.keys(),
    ]).optional(),
    depth: field({
      ...length,
      says: "average depth, where neither a coefficient nor the bed is given",
      example: "1 ft",
    }).optional(),
  })
  .meta({ description: "floats timed over a stretch" });

const velocity = (where: string): ReturnType<z.ZodType["optional"]> =>
  field({
    kinds: ["velocity"],
    says: `velocity ${where}`,
    example: "0.42 m/s",
    sign: "any",
  }).optional();

const meter = z
  .strictObject({
    edges: z
      .array(
        z.strictObject({
          at: height("reading of the tape", "0.4 m"),
          depth: field({
            ...length,
            says: "depth at an upright bank",
            example: "0.2 m",
            sign: "non-negative",
          }).optional(),
          share: field({
            kinds: ["coefficient"],
            says: "velocity at an upright bank over that of the nearest vertical",
            example: "0.65",
          }).optional(),
        }),
      )
      .length(2)
      .meta({ description: "the two edges of the water, the smaller reading of the tape first" }),
    verticals: z
      .array(
        z.strictObject({
          at: height("reading of the tape", "0.9 m"),
          depth: field({ ...length, says: "depth", example: "0.35 m", sign: "non-negative" }),
          surface: velocity("at the surface"),
          "two tenths": velocity("at two tenths of the depth below the surface"),
          "six tenths": velocity("at six tenths of the depth below the surface"),
          "eight tenths": velocity("at eight tenths of the depth below the surface"),
        }),
      )
      .min(1)
      .meta({ description: "verticals along the tape" }),
    exposure: time("how long the meter was held at each point", "40 s").optional(),
    rating: oneOf("whether the meter has a rating of its own or that of its make", [
      "individual",
      "group",
    ]).optional(),
  })
  .meta({ description: "a gauging with meter and rod, by verticals" });

const span = (says: string): z.ZodType =>
  z
    .strictObject({
      from: field({ kinds: ["time"], says: "where it begins", example: "190 s", sign: "any" }),
      to: field({ kinds: ["time"], says: "where it ends", example: "700 s", sign: "any" }),
    })
    .meta({ description: says });

const waterAt = temperature(
  "temperature of the water, where the loggers did not write it",
  "48 °F",
  {
    least: "-1 °C",
    most: "45 °C",
  },
);

const solution = field({
  kinds: ["density"],
  says: "salt in the solution, by volume of it",
  example: "10 g/L",
});

const calibration = z
  .strictObject({
    water: field({ kinds: ["volume"], says: "stream water at the beginning", example: "500 mL" }),
    solution,
    "made with": oneOf("what the solution was made with", ["stream water", "distilled water"]),
    readings: calibrationSpec,
  })
  .meta({ description: "calibration of the probe, drop by drop" });

const saltKeys = {
  probes: z
    .array(seriesSpec)
    .min(1)
    .max(2)
    .meta({ description: "files of the probes: one, or one at each bank" }),
  calibration: calibration.optional(),
  temperature: waterAt.optional(),
  background: span("where the background is read, in the times of the record").optional(),
};

const salt = z
  .strictObject({
    mass: field({ kinds: ["mass"], says: "salt that was thrown in", example: "2 kg" }),
    ...saltKeys,
    window: span("what is summed, in the times of the record").optional(),
  })
  .meta({ description: "salt thrown in at once, and the cloud that passed" });

const saltFeed = z
  .strictObject({
    rate: field({ kinds: ["volume flow"], says: "flow of the solution", example: "0.2 L/min" }),
    solution,
    ...saltKeys,
    plateau: span("where the plateau is read, in the times of the record").optional(),
  })
  .meta({ description: "salt solution fed in at a steady rate" });

const nozzles = z
  .strictObject({
    gauge: field({
      kinds: ["pressure"],
      says: "gauge before the nozzles while they ran",
      example: "38 psi",
    }),
    "read to": field({
      kinds: ["pressure"],
      says: "smallest division of the gauge",
      example: "1 psi",
    }).optional(),
    "gauge above nozzles": height("height of the gauge over the nozzles", "6 in").optional(),
    open: z
      .array(field({ ...length, says: "bore of a nozzle that was open", example: "1/2 in" }))
      .min(1),
    bore: field({ ...length, says: "bore of the pipe where the gauge sits", example: "3 in" }),
    coefficient: field({
      kinds: ["coefficient"],
      says: "discharge coefficient of the nozzles",
      example: "0.95 ± 0.03",
      between: { kind: "coefficient", least: "0", most: "1" },
    }).optional(),
  })
  .meta({ description: "running nozzles, read as a meter" });

const staff = z
  .strictObject({
    readings: z
      .array(height("what a reader read on the staff", "0.84 ft"))
      .min(1)
      .meta({ description: "readings of the staff, one of each reader" }),
    "read to": field({ ...length, says: "smallest division of the staff", example: "0.02 ft" }),
    calibration: field({
      ...length,
      says: "the staff's own error, at 95 %",
      example: "0.01 ft",
    }).optional(),
    gaugings: z
      .array(
        z.strictObject({
          on: date("day of the gauging").optional(),
          stage: height("stage, on the same staff", "0.84 ft"),
          flow: field({ ...flow, says: "flow that was measured" }),
        }),
      )
      .min(1)
      .meta({ description: "flows that were measured, and their stages" })
      .optional(),
    "gaugings file": gaugingsSpec.optional(),
    zero: height("stage of zero flow, where it was levelled", "0.2 ft").optional(),
  })
  .meta({ description: "a staff, and the flows that were measured at its readings" });

/** Ways to measure the flow, and what may stand beside any of them. */
export const wayOfFlow = {
  name: words("what people call the measurement", ["notch at the ford"]).optional(),
  on: date("day of the measurement").optional(),
  flow: field({
    ...flow,
    says: "flow of the stream, where no measurement of it is given",
  }).optional(),
  notch: notch.optional(),
  crest: crest.optional(),
  bucket: bucket.optional(),
  floats: floats.optional(),
  meter: meter.optional(),
  salt: salt.optional(),
  "salt feed": saltFeed.optional(),
  nozzles: nozzles.optional(),
  staff: staff.optional(),
  leaks: field({
    ...flow,
    says: "what flowed past the place that was measured",
    example: "2 gal/min ± 1 gal/min",
    sign: "non-negative",
  }).optional(),
};

const share = (says: string, example: string): ReturnType<typeof field> =>
  field({
    kinds: ["ratio"],
    says,
    example,
    sign: "non-negative",
    between: { kind: "ratio", least: "0 %", most: "100 %" },
  });

const staying = (says: string, example = "4 L/s"): ReturnType<typeof field> =>
  field({ kinds: ["volume flow"], says, example, sign: "non-negative" });

/** What must stay, by rules: each that is given holds, and the greatest decides. */
export const leaveRules = z
  .strictObject({
    flow: staying("flow that stays all year").optional(),
    "share of mean": share("share of the mean flow that stays", "30 %").optional(),
    exceeded: share(
      "share of the time that the flow which stays is exceeded for",
      "95 %",
    ).optional(),
    "exceeded by month": share("the same, month by month", "90 %").optional(),
    tennant: oneOf("Tennant's condition of the stream", [...tennantShares.keys()]).optional(),
    "low months": z
      .array(oneOf("month in which the stream is low, for Tennant", monthNames))
      .min(1)
      .optional(),
    "hands off": staying("flow below which nothing is taken", "6 L/s").optional(),
    "take above": share("share of what is above it that may be taken", "50 %").optional(),
    months: z
      .strictObject(
        Object.fromEntries(
          monthNames.map((month) => [month, staying(`flow that stays in ${month}`)]),
        ),
      )
      .meta({ description: "a flow for each month, as a licence prints them" })
      .optional(),
    fish: z
      .array(
        z.strictObject({
          from: monthDay("first day of the season"),
          to: monthDay("last day of the season"),
          flow: staying("flow that fish need in it", "8 L/s"),
        }),
      )
      .min(1)
      .meta({ description: "seasons in which fish pass" })
      .optional(),
    most: staying("most that may be taken", "25 L/s").optional(),
  })
  .meta({ description: "rules for what must stay; the greatest decides" });

const area = field({ kinds: ["area"], says: "area that drains to it", example: "1.2 mi²" });
const runoff = field({ kinds: ["runoff"], says: "mean runoff of that area", example: "650 mm/yr" });

/** What may be known of the stream through the year, and the board that its flow is read off. */
export const throughTheYear = {
  board: z
    .strictObject({
      ...opening,
      sill: field({
        ...length,
        says: "vertex or sill over the bed of the channel",
        example: "1 ft",
      }),
      channel: field({
        ...length,
        says: "width of the channel that brings the water",
        example: "5 ft",
      }),
      from: field({ ...length, says: "lowest mark of the ruler", example: "1 in" }),
      to: field({ ...length, says: "highest mark of the ruler", example: "8 in" }),
      division: field({ ...length, says: "smallest division of the ruler", example: "1/8 in" }),
    })
    .meta({ description: "the ruler on a weir, for a table of flows by its marks" })
    .optional(),
  record: recordSpec.optional(),
  gauged: z
    .strictObject({
      name: words("what people call the gauged stream", ["Mill Creek (invented)"]).optional(),
      record: recordSpec,
      area: area.optional(),
      runoff: runoff.optional(),
    })
    .meta({ description: "a stream near by that has a gauge" })
    .optional(),
  area: area.optional(),
  runoff: runoff.optional(),
  "year from": oneOf("month that a year of low flows begins with", monthNames).optional(),
  "built for": z
    .array(field({ ...flow, says: "a flow that a scheme might be built for", example: "12 L/s" }))
    .min(1)
    .optional(),
};

/** Number of a month, 1 to 12. */
export function monthNumber(name: string): number {
  return monthNames.indexOf(name) + 1;
}

const levelSetup = z.strictObject({
  back: height("rod on the mark behind", "7.42 ft"),
  fore: height("rod on the mark ahead", "1.08 ft"),
  distance: field({ ...length, says: "both sights together", example: "120 ft" }).optional(),
  at: words("what the mark ahead is called", ["peg 3"]).optional(),
});

const levels = z
  .strictObject({
    instrument: oneOf("what it was levelled with", [...levelSpreads.keys()]),
    out: z
      .array(levelSetup)
      .min(1)
      .meta({ description: "set-ups from the first mark to the last" }),
    returning: z
      .array(levelSetup)
      .min(1)
      .meta({ description: "set-ups back to the first mark" })
      .optional(),
    closing: field({ ...length, says: "what it may close within", example: "0.1 ft" }).optional(),
    rod: field({ ...length, says: "length of the rod", example: "13 ft" }).optional(),
  })
  .meta({ description: "level and rod" });

const steps = z
  .strictObject({
    steps: z
      .array(height("how much lower the next mark is", "4 ft 7 in"))
      .min(1)
      .meta({ description: "steps from the upper mark to the lower one" }),
    again: z.array(height("the same, once more", "4 ft 7 in")).min(1).optional(),
  })
  .meta({ description: "a fall taken step by step" });

const air = (
  kind: "pressure" | "length",
  reads: string,
  example: string,
  division: string,
): z.ZodType => {
  const reading = z.strictObject({
    time: clock("when it was read"),
    reads: field({
      kinds: [kind],
      says: reads,
      example,
      sign: kind === "length" ? "any" : "positive",
    }),
  });
  return z
    .strictObject({
      upper: reading,
      lower: reading,
      again: reading.meta({ description: "once more where the first was taken" }).optional(),
      air: temperature("temperature of the air between them", "60 °F", {
        least: "-40 °C",
        most: "50 °C",
      }),
      division: field({ kinds: [kind], says: "smallest step that it shows", example: division }),
    })
    .meta({ description: `${reads} at both ends` });
};

const satellite = z
  .strictObject({
    upper: height("height at the intake", "412 m"),
    lower: height("height at the nozzles", "371 m"),
    receiver: oneOf("kind of receiver", [...satelliteReceivers.keys()]),
    apart: field({
      ...length,
      says: "how far apart they are on a map",
      example: "250 m",
    }).optional(),
  })
  .meta({ description: "heights by satellite" });

const map = z
  .strictObject({
    upper: height("height at the intake, between contours", "1,340 ft"),
    lower: height("height at the nozzles, between contours", "1,225 ft"),
    interval: field({ ...length, says: "height from one contour to the next", example: "40 ft" }),
  })
  .meta({ description: "heights by the contours of a map" });

const pressure = (says: string, example: string): ReturnType<typeof field> =>
  field({ kinds: ["pressure"], says, example, sign: "any" });

/** Ways to measure the fall, and what may stand beside any of them. */
export const wayOfFall = {
  name: words("what people call the measurement", ["hose and gauge"]).optional(),
  gross: field({
    kinds: ["length", "pressure"],
    says: "fall from the intake's water level to the nozzles; a pressure is taken as a gauge reading",
    example: "110 ft",
  }).optional(),
  gauge: field({
    kinds: ["pressure"],
    says: "gauge at the bottom of a full, closed hose or pipe",
    example: "47.7 psi",
  }).optional(),
  "gauge above nozzles": height("height of the gauge over the nozzles", "1 ft").optional(),
  "gauge zero": pressure("what the gauge shows open to the air", "0.5 psi").optional(),
  "full scale": field({
    kinds: ["pressure"],
    says: "full scale of the gauge",
    example: "100 psi",
  }).optional(),
  class: oneOf("class or grade on the gauge's dial", [
    ...gaugeClasses.keys(),
    ...gaugeGrades.keys(),
  ]).optional(),
  "read to": field({
    kinds: ["length", "pressure"],
    says: "smallest division of the instrument",
    example: "1 psi",
  }).optional(),
  levels: levels.optional(),
  hose: steps.optional(),
  plank: steps.optional(),
  barometer: air(
    "pressure",
    "air pressure, not reduced to the sea",
    "1013.2 hPa",
    "0.1 hPa",
  ).optional(),
  altimeter: air("length", "what the altimeter shows", "1,340 ft", "1 ft").optional(),
  satellite: satellite.optional(),
  map: map.optional(),
  "water above upper mark": height(
    "water level of the intake above the upper mark",
    "8 in",
  ).optional(),
  "nozzles above lower mark": height("nozzles above the lower mark", "2 ft").optional(),
  "tail water above lower mark": height("tail water above the lower mark", "-1 ft").optional(),
  "flood above lower mark": height("highest flood mark above the lower mark", "1 ft").optional(),
};

/** What may stand beside the way of a measurement. */
const beside = new Set([
  "name",
  "on",
  "leaks",
  "gauge above nozzles",
  "gauge zero",
  "full scale",
  "class",
  "read to",
  "water above upper mark",
  "nozzles above lower mark",
  "tail water above lower mark",
  "flood above lower mark",
]);

/** Keys that each stand for one way of measuring the flow. */
export const flowWays: readonly string[] = Object.keys(wayOfFlow).filter((key) => !beside.has(key));

/** Keys that each stand for one way of measuring the fall. */
export const headWays: readonly string[] = Object.keys(wayOfFall).filter((key) => !beside.has(key));

/** Keys of a measurement that have no place beside a list of measurements. */
export const besideMeasured: Readonly<Record<"stream" | "fall", readonly string[]>> = {
  stream: Object.keys(wayOfFlow).filter((key) => beside.has(key)),
  fall: Object.keys(wayOfFall).filter((key) => beside.has(key)),
};
