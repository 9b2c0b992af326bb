import {
  altimeterHead,
  altimeterHeight,
  type AltimeterReading,
  barometerHead,
  type BarometerReading,
  barometricHeight,
  type Closure,
  fallBetween,
  gaugeHead,
  hoseAndGaugeHead,
  hoseLevelling,
  levelling,
  mapHead,
  plankLevelling,
  satelliteHead,
  waterToNozzleHead,
} from "@leat/flow-measurement";
import type { Assumption } from "@leat/formula";
import { metre, pascal, type Point, point, type Quantity } from "@leat/quantity";

import { bothHeights, bothPressures } from "../both.ts";
import type { Ledger } from "../ledger.ts";
import type {
  AirReadingSurvey,
  FallSurvey,
  HeadSurvey,
  LevelsSurvey,
  StepsSurvey,
} from "../survey.ts";
import type { Conditions } from "./conditions.ts";
import { type Measured, measured } from "./measured.ts";
import { type Taken, Taking } from "./measurement.ts";

/**
 * The fall, by every measurement of it.
 *
 * @param fall - What the survey says of it.
 * @param ledger - Lists what is assumed.
 * @param conditions - Gravity and water of the site.
 * @returns Each measurement, all of them combined.
 */
export function measureFall(
  fall: FallSurvey,
  ledger: Ledger,
  conditions: Conditions,
): Measured<"gross head"> {
  const { customary } = conditions;
  const measurements = fall.measured.map((each, i) => {
    const way = wayOf(each);
    const taking = fall.listed
      ? new Taking({
          ledger,
          key: `fall.measured.${i + 1}`,
          path: ["fall", "measured", i],
          way,
          customary,
        })
      : new Taking({ ledger, key: "fall", path: ["fall"], way, customary });
    const { by, value } = taking.guarded(() => fallBy(taking, each, conditions));
    if (!(value["~si"] > 0))
      taking.stop(
        "no-fall",
        `the fall comes to ${bothHeights(value["~si"], customary)}, which is none. Check the readings and their signs.`,
      );
    return taking.made({ name: each.name, on: undefined, by, value });
  });
  return measured("fall", ["fall", "measured"], measurements, ledger);
}

/** The key of the survey that the measurement stands under. */
function wayOf(each: HeadSurvey): string {
  const ways = [
    "gauge",
    "levels",
    "hose",
    "plank",
    "barometer",
    "altimeter",
    "satellite",
    "map",
  ] as const;
  return ways.find((way) => each[way]) ?? "gross";
}

/** Works the fall out in the way it was measured: from the marks to water and nozzles, where they differ. */
function fallBy(taking: Taking, each: HeadSurvey, conditions: Conditions): Taken<"gross head"> {
  const { by, value } = betweenMarks(taking, each, conditions);
  const {
    waterAboveUpperMark: water,
    nozzlesAboveLowerMark: nozzles,
    tailWaterAboveLowerMark,
    floodAboveLowerMark,
  } = each;
  if (!water && !nozzles && !tailWaterAboveLowerMark && !floodAboveLowerMark) return { by, value };
  const marks = {
    fall: value,
    waterAboveUpperMark: water ?? metre.of(0),
    nozzleAboveLowerMark: nozzles ?? metre.of(0),
  };
  const fall = taking.guarded(
    () =>
      fallBetween(
        { ...marks, tailWaterAboveLowerMark, floodAboveLowerMark },
        { onNotice: taking.telling([]) },
      ),
    [],
  );
  taking.sheet(waterToNozzleHead, marks);
  for (const [what, height] of [
    ["nozzles above the tail water", fall.nozzleAboveTailWater],
    ["nozzles above the flood mark", fall.nozzleAboveFlood],
  ] as const)
    if (height) taking.facts.push({ what, value: bothHeights(height["~si"], taking.customary) });
  return { by, value: fall.head };
}

function betweenMarks(
  taking: Taking,
  each: HeadSurvey,
  conditions: Conditions,
): Taken<"gross head"> {
  const name = taking.ledger.sourceOf(taking.key);
  const options = {
    onNotice: taking.tell,
    onAssumed: ({ input, value, because }: Assumption): void =>
      taking.assume([wayOf(each)], words[input] ?? input, value, because),
  };
  if (each.gauge) return gaugeFall(taking, each, each.gauge, conditions);
  if (each.levels) return levelledFall(taking, each.levels, name);
  if (each.hose || each.plank) {
    const { steps, again } = (each.hose ?? each.plank) as StepsSurvey;
    const run = each.hose ? hoseLevelling : plankLevelling;
    const { head, closure } = run(
      {
        name,
        steps: steps.map((drop) => ({ drop })),
        ...(again && { again: again.map((drop) => ({ drop })) }),
      },
      options,
    );
    tellClosure(taking, closure);
    return {
      by: each.hose ? "water-filled hose, in steps" : "plank and level, in steps",
      value: head,
    };
  }
  if (each.barometer) {
    const { upper, lower, again, air, division } = each.barometer;
    const at = ({ time, reads }: AirReadingSurvey<"pressure">): BarometerReading => ({
      time,
      pressure: point("vacuum", reads),
    });
    const { head } = barometerHead(
      {
        name,
        upper: at(upper),
        lower: at(lower),
        again: again && at(again),
        airTemperature: air,
        division,
        gravity: conditions.gravity,
      },
      options,
    );
    taking.cite(barometricHeight.definition.source);
    return { by: "barometer", value: head };
  }
  if (each.altimeter) {
    const { upper, lower, again, air, division } = each.altimeter;
    const at = ({ time, reads }: AirReadingSurvey<"altitude">): AltimeterReading => ({
      time,
      altitude: reads,
    });
    const { head } = altimeterHead(
      {
        name,
        upper: at(upper),
        lower: at(lower),
        again: again && at(again),
        airTemperature: air,
        division,
      },
      options,
    );
    taking.cite(altimeterHeight.definition.source);
    return { by: "altimeter", value: head };
  }
  if (each.satellite) {
    const { upper, lower, receiver, apart } = each.satellite;
    const { head } = satelliteHead(
      { name, upper: level(upper), lower: level(lower), receiver, apart },
      options,
    );
    return { by: "satellite heights", value: head };
  }
  if (each.map) {
    const { upper, lower, interval } = each.map;
    const { head } = mapHead({ name, upper: level(upper), lower: level(lower), interval }, options);
    return { by: "contours of a map", value: head };
  }
  return statedFall(taking, each.gross as Quantity<"length">);
}

/** What is taken for an input that the survey does not give. */
const words: Readonly<Record<string, string>> = {
  setupSpread: "spread of one set-up",
  stepSpread: "spread of one step",
  rodError: "error of the rod",
  collimation: "tilt of the level's line of sight",
  closing: "what it may close within",
  airTemperature: "spread of the air's temperature",
  heightSpread: "spread of one height",
  apart: "slope of the geoid",
  interval: "spread of a contour",
  vapourPressure: "vapour in the air",
  airPressure: "pressure of the air",
  scale: "air that the altimeter's scale is made for",
};

/** A height over the sea, or over whatever both ends are over. */
function level(height: Quantity<"length">): Point<"site datum"> {
  return point("site datum", height, "heights");
}

function tellClosure(taking: Taking, closure: Closure | undefined): void {
  if (!closure) return;
  const [left, allowed] = [closure.misclosure, closure.allowed].map((q) =>
    bothHeights(Math.abs(q["~si"]), taking.customary),
  );
  taking.facts.push({
    what: "left over, out and back",
    value: `${left}; ${allowed} is allowed`,
  });
}

/** A fall that was stated. */
function statedFall(taking: Taking, gross: Quantity<"length">): Taken<"gross head"> {
  return {
    by: "stated",
    value: taking
      .reading(
        "gross",
        {
          what: "fall",
          how: "level the fall with a rod and close the loop, or read a gauge on a full hose",
          spreadKey: "fall.gross",
        },
        gross,
      )
      .as("gross head"),
  };
}

/** A line of levels. */
function levelledFall(
  taking: Taking,
  { instrument, out, returning, closing, rod }: LevelsSurvey,
  name: string,
): Taken<"gross head"> {
  const { head, closure } = levelling(
    { name, setups: out, returning, instrument, closing, rodLength: rod },
    {
      onNotice: taking.tell,
      onAssumed: ({ input, value, because }) =>
        taking.assume(["levels"], words[input] ?? input, value, because),
    },
  );
  tellClosure(taking, closure);
  return { by: "level and rod", value: head };
}

/** A gauge at the foot of a full hose: by its class, where its dial was read too. */
function gaugeFall(
  taking: Taking,
  { gaugeAboveNozzles = metre.of(0), fullScale, class: accuracy, gaugeZero }: HeadSurvey,
  gauge: Quantity<"pressure">,
  { density, gravity }: Conditions,
): Taken<"gross head"> {
  if (fullScale && accuracy) {
    const name = taking.ledger.sourceOf(`${taking.key}.gauge`);
    const { head, limit } = gaugeHead(
      {
        name,
        gauge: point("local atmosphere", gauge, "hose foot"),
        fullScale,
        accuracy,
        zero: gaugeZero,
        division: divisionOf(gauge),
        gaugeAboveJet: gaugeAboveNozzles,
        density,
        gravity,
      },
      { onNotice: taking.tell },
    );
    taking.facts.push({
      what: `gauge of class ${accuracy}`,
      value: `may be wrong by ${bothPressures(limit["~si"], taking.customary)}`,
    });
    taking.sheet(hoseAndGaugeHead, {
      gauge: point("local atmosphere", gaugeZero ? gauge.minus(gaugeZero) : gauge, "hose foot"),
      gaugeAboveJet: gaugeAboveNozzles,
      density,
      gravity,
    });
    return { by: "gauge", value: head };
  }
  const read = taking.reading(
    "gauge",
    {
      what: "gauge reading at the bottom",
      how: "read a gauge of a finer class, and check its zero",
      spreadKey: "fall.gauge",
    },
    gaugeZero ? gauge.minus(gaugeZero) : gauge,
  );
  return {
    by: "gauge",
    value: taking.call(hoseAndGaugeHead, {
      gauge: point("local atmosphere", read, "hose foot"),
      gaugeAboveJet: gaugeAboveNozzles,
      density,
      gravity,
    }),
  };
}

/** The division of the instrument, where it was named. */
function divisionOf(gauge: Quantity<"pressure">): Quantity<"pressure"> | undefined {
  const reading = gauge.reading();
  const unit = gauge["~unit"];
  return reading && unit && !reading.assumed ? pascal.of(unit.toSI(reading.resolution)) : undefined;
}
