import { continuousRating } from "@leat/dc-transmission";
import { divertedPower, elementPower, elementsNeeded, heatingTime } from "@leat/dump-load";
import { commonPractice, firstPrinciples, type Notice, type Working } from "@leat/formula";
import {
  ampere,
  type AnyQuantity,
  coherentUnit,
  footPerSecond,
  format,
  kelvin,
  Quantity,
  volt,
  watt,
} from "@leat/quantity";

import { type Account, accountNotice, type Loss } from "./account.ts";
import { type Assumed, commonElement } from "./assume.ts";
import { bothFlows, bothPressures } from "./both.ts";
import { cautionNotices, openCircuitRatio } from "./cautions.ts";
import { compute, type Numbers, useBody, type Values } from "./compute.ts";
import { firstLook } from "./first-look.ts";
import { inOrder } from "./in-order.ts";
import type { Parameter } from "./ledger.ts";
import { type Plan, planOf } from "./plan.ts";
import { Recorder } from "./recorder.ts";
import type { Survey } from "./survey.ts";
import { k95, type Spread, spreadOf } from "./uncertainty.ts";

/** What a measurement would do to the headline. */
export interface Narrowing {
  /** Path of the number, as one word. */
  readonly key: string;
  /** What it is. */
  readonly what: string;
  /** How to know it better. */
  readonly how: string;
  /** Half width of the headline at 95 % were it known exactly. */
  readonly half: Quantity<"electric power">;
}

/** The watts at the battery's terminals, and how sure they are. */
export interface Headline {
  /** The watts, with every source of uncertainty. */
  readonly watts: Quantity<"electric power">;
  /** Half width at 95 %. */
  readonly half: Quantity<"electric power">;
  /** Coverage factor of the printed ±, where it comes of slopes. */
  readonly k: number;
  /** How the half width was found. */
  readonly method: Spread["method"];
}

/** One reach, as it turned out. */
export interface DesignedReach {
  /** As it is printed. */
  readonly name: string;
  /** Length along the pipe. */
  readonly length: Quantity<"pipe length">;
  /** Bore that friction is worked out with. */
  readonly bore: Quantity<"length">;
  /** Head lost to friction. */
  readonly friction: Quantity<"head loss">;
  /** Head lost in fittings. */
  readonly fittings: Quantity<"head loss">;
  /** Velocity of the water. */
  readonly velocity: Quantity<"velocity">;
  /** Reynolds number. */
  readonly reynolds: number;
  /** Darcy friction factor. */
  readonly frictionFactor: number;
  /** Static pressure at its foot. */
  readonly staticPressure: Quantity<"pressure">;
  /** What the pipe is rated for, where that is known. */
  readonly rating?: Quantity<"pressure">;
}

/** A scheme made of a survey. */
export interface Design {
  /** What people call the site, or the id of the survey. */
  readonly site: string;
  /** The stream. */
  readonly stream: {
    readonly by: string;
    readonly measured: Quantity<"volume flow">;
    readonly left: Quantity<"volume flow">;
    readonly usable: Quantity<"volume flow">;
  };
  /** The fall. */
  readonly fall: {
    readonly by: string;
    readonly gross: Quantity<"gross head">;
    readonly loss: Quantity<"head loss">;
    readonly net: Quantity<"net head">;
    readonly staticPressure: Quantity<"pressure">;
    readonly runningPressure: Quantity<"pressure">;
  };
  /** Pipe, from the intake down. */
  readonly reaches: readonly DesignedReach[];
  /** Jets. */
  readonly jets: {
    readonly nozzles: readonly Quantity<"length">[];
    /** Whether the bores were given, or follow from the flow. */
    readonly given: boolean;
    readonly flow: Quantity<"volume flow">;
    readonly velocity: Quantity<"velocity">;
    readonly convergence?: Numbers["convergence"];
  };
  /** Speed of the wheel, where its diameter is known. */
  readonly wheel: { readonly speed?: Quantity<"angular velocity"> };
  /** Where the power goes. */
  readonly account: {
    readonly gross: Quantity<"hydraulic power">;
    readonly losses: readonly {
      readonly name: string;
      readonly path: readonly (string | number)[];
      readonly power: Quantity<"power">;
    }[];
    readonly delivered: Quantity<"electric power">;
    /** Delivered over gross. */
    readonly waterToWire: Quantity<"efficiency">;
  };
  /** Cable. */
  readonly cable: {
    readonly conductor: string;
    readonly loop: Quantity<"resistance">;
    readonly current: Quantity<"current">;
    readonly machineVolts: Quantity<"voltage">;
    readonly drop: Quantity<"voltage">;
  };
  /** Diversion. */
  readonly divert: {
    readonly power: Quantity<"electric power">;
    readonly volts: Quantity<"voltage">;
    readonly element: Quantity<"electric power">;
    readonly elements: number;
    readonly total: Quantity<"electric power">;
    readonly current: Quantity<"current">;
    /** Time for the delivered power to heat the tank by 40 K, where a tank is given. */
    readonly heating?: Quantity<"time">;
  };
  /** The watts, withheld where there is a stop. */
  readonly headline?: Headline;
  /** The measurements that would narrow the headline most. */
  readonly narrow: readonly Narrowing[];
  /** Everything that was taken for the user. */
  readonly assumed: readonly Assumed[];
  /** Stops first, then cautions, then notes. */
  readonly notices: readonly Notice[];
  /** Formulas that made it. */
  readonly formulas: readonly { readonly id: string; readonly revision: number }[];
}

/** A design with what it was made of. */
export interface Designed {
  /** The design: plain data and quantities. */
  readonly design: Design;
  /** What was decided. */
  readonly plan: Plan;
  /** The numbers, in coherent units. */
  readonly numbers: Numbers;
  /** The calculation sheet. */
  readonly working: () => Working[];
}

/**
 * Makes a scheme of a survey: every open choice is decided and listed, every loss is named, and the
 * watts carry their uncertainty.
 *
 * @param survey - The survey.
 * @param assumed - What reading it took for granted.
 * @returns The scheme; one with a stop has no headline.
 * @throws UnbuildableError where no scheme can be worked out at all.
 */
export function designScheme(survey: Survey, assumed: readonly Assumed[] = []): Designed {
  const plan = planOf(survey, firstLook);
  const values: Values = Object.fromEntries(plan.parameters.map(({ key, value }) => [key, value]));
  const recorder = new Recorder();
  const numbers = compute(plan, values, recorder.use);
  const limits = recorder.limits(plan.parameters);
  const made = [...plan.flow.measurements, ...plan.fall.measurements];
  const formulas = once([...made.flatMap((each) => each.formulas), ...recorder.formulas()]);

  const account = accountOf(plan, numbers);
  const more: Assumed[] = [];
  const divert = divertOf(plan, numbers, values, more);
  const notices = inOrder([
    ...[accountNotice(account) ?? []].flat(),
    ...[plan.flow, plan.fall].flatMap((each) => each.notices),
    ...checks(plan, numbers),
    ...limits.map(asSurveyNotice),
  ]);
  const spread = spreadOf(plan.parameters, (at) => compute(plan, at, useBody).delivered, survey.id);
  const told = inOrder([...notices, ...refusedDraws(spread), ...cautionNotices({ plan, numbers })]);
  const stopped = told.some(({ severity }) => severity === "stop");
  const design: Design = {
    ...present(plan, numbers, account, divert, [...assumed, ...plan.assumed, ...more], formulas),
    ...(!stopped && {
      headline: headlineOf(survey.id, numbers.delivered, spread, plan.parameters),
    }),
    narrow: stopped ? [] : narrowing(plan.parameters, spread),
    notices: told,
  };
  return {
    design,
    plan,
    numbers,
    working: () => [...made.flatMap((each) => each.working()), ...recorder.sheets(plan.parameters)],
  };
}

function accountOf(plan: Plan, n: Numbers): Account {
  const losses: Loss[] = [
    ...plan.reaches.flatMap(({ name }, i) => [
      {
        name: `friction in reach ${i + 1} (${name})`,
        path: ["reaches", i],
        watts: n.frictionPower[i] as number,
      },
      {
        name: `fittings of reach ${i + 1}`,
        path: ["reaches", i, "fittings"],
        watts: n.fittingsPower[i] as number,
      },
    ]),
    { name: "nozzles", path: ["jets"], watts: n.nozzlePower },
    { name: "wheel", path: ["wheel"], watts: n.wheelPower },
    { name: "machine and rectifier", path: ["machine"], watts: n.machineLossPower },
    { name: "cable", path: ["cable"], watts: n.cablePower },
  ];
  return { gross: n.gross, losses, delivered: n.delivered };
}

function divertOf(plan: Plan, n: Numbers, values: Values, assumed: Assumed[]): Design["divert"] {
  const { divert } = plan.survey;
  const volts = divert.volts ?? volt.of(Number((values["bank.charging"] as number).toPrecision(6)));
  if (!divert.volts)
    assumed.push({
      path: ["divert", "volts"],
      what: "volts at which diversion is switched in: those of charging",
      value: format(volts, volt, 3),
      because: undefined,
    });
  const rated = divert.element ?? {
    power: watt.of(commonElement.watts),
    volts: volt.of(commonElement.volts),
  };
  if (!divert.element)
    assumed.push({
      path: ["divert", "element"],
      what: "heating element as sold",
      value: `${rated.power.toString()}, ${rated.volts.toString()}`,
      because: commonElement.because,
    });
  const power = divertedPower(
    {
      machinePower: coherentUnit("electric power").of(n.machine),
      ...(divert.margin && { margin: coherentUnit("ratio").of(1 + divert.margin["~si"]) }),
    },
    {
      onAssumed: ({ input, value, because }) => {
        if (input === "margin")
          assumed.push({
            path: ["divert", "margin"],
            what: "what can come, times this, must be able to go",
            value,
            because,
          });
      },
    },
  );
  assumed.push({
    path: ["machine", "openCircuit"],
    what: "open-circuit volts at runaway over the working volts, for the cautions",
    value: String(openCircuitRatio),
    because: commonPractice.at(
      "open-circuit volts of a permanent-magnet machine can reach three times the working volts",
      "practice",
    ),
  });
  if (divert.tank) {
    assumed.push({
      path: ["divert", "tank", "heating"],
      what: "heating of the tank",
      value: "by 40 K, with the delivered power and no loss",
      because: commonPractice.at("from cold to hot, while nobody uses any", "practice"),
    });
  }
  const element = elementPower({
    ratedPower: rated.power,
    ratedVoltage: rated.volts,
    voltage: volts,
  });
  const elements = elementsNeeded({
    power,
    ratedPower: rated.power,
    ratedVoltage: rated.volts,
    voltage: volts,
  });
  const total = element.times(elements);
  return {
    power,
    volts,
    element,
    elements,
    total,
    current: ampere.of(total.in(watt) / volts.in(volt)),
    ...(divert.tank && {
      heating: heatingTime({
        mass: coherentUnit("mass").of(divert.tank["~si"] * n.density),
        rise: kelvin.of(40),
        power: coherentUnit("electric power").of(n.delivered),
        efficiency: coherentUnit("efficiency").of(1),
      }),
    }),
  };
}

/** What the numbers themselves stop or caution. */
function checks(plan: Plan, n: Numbers): Notice[] {
  const notices: Notice[] = [];
  const flow = (q: number): string => bothFlows(q);
  if (n.usable <= 0) {
    notices.push({
      code: "nothing-to-take",
      severity: "stop",
      path: ["stream", "leave"],
      message: `what must stay (${flow(n.left)}) is all that was measured (${flow(n.measured)}): nothing may be taken. Measure in another season, or ask the regulator.`,
      actual: flow(n.measured),
      limit: `more than ${flow(n.left)}`,
    });
  } else if (plan.nozzlesGiven && n.flow > n.measured * (1 + 1e-9)) {
    notices.push({
      code: "jets-beyond-stream",
      severity: "stop",
      path: ["jets", "nozzles"],
      message: `the nozzles would pass ${flow(n.flow)} and the stream gives ${flow(n.measured)}: the pipe would run part-empty and draw air. Fit smaller nozzles or open fewer.`,
      actual: flow(n.flow),
      limit: `at most ${flow(n.measured)}`,
    });
  } else if (plan.nozzlesGiven && n.flow > n.usable * (1 + 1e-9)) {
    notices.push({
      code: "residual-flow-taken",
      severity: "stop",
      path: ["jets", "nozzles"],
      message: `the nozzles would pass ${flow(n.flow)} where ${flow(n.usable)} may be taken: the stream would keep less than the ${flow(n.left)} that must stay. Fit smaller nozzles or open fewer.`,
      actual: flow(n.flow),
      limit: `at most ${flow(n.usable)}`,
    });
  }
  notices.push(...pressureChecks(plan, n), ...flowNotes(n), ...currentChecks(plan, n));
  return notices;
}

/** Static pressure against the rating, reach by reach; the fall is shared by length where it is not surveyed. */
function pressureChecks(plan: Plan, n: Numbers): Notice[] {
  return plan.reaches.flatMap(({ pipe, name }, i): Notice[] => {
    const rating = pipe?.pressureRating;
    const foot = footPressure(plan, n, i);
    if (!rating || foot <= rating["~si"]) return [];
    const [got, allowed] = [foot, rating["~si"]].map((p) => bothPressures(p)) as [string, string];
    return [
      {
        code: "pipe-class-exceeded",
        severity: "stop",
        path: ["reaches", i, "pipe"],
        message: `static pressure at the foot of reach ${i + 1} is ${got}, above the ${allowed} that ${name} is rated for, and water hammer comes on top. Choose a stronger class.`,
        actual: got,
        limit: `at most ${allowed}`,
        source: pipe?.source,
      },
    ];
  });
}

/** Pressure at the foot of a reach: the whole fall at the last, shares by length above it. */
function footPressure(plan: Plan, n: Numbers, i: number): number {
  const lengths = plan.reaches.map(
    (_, j) =>
      (plan.parameters.find(({ key }) => key === `reaches.${j + 1}.length`) as Parameter).value,
  );
  const total = lengths.reduce((a, b) => a + b, 0);
  const above = lengths.slice(0, i + 1).reduce((a, b) => a + b, 0);
  return (n.staticPressure * above) / total;
}

function flowNotes(n: Numbers): Notice[] {
  const notices: Notice[] = [];
  n.reaches.forEach(({ velocity }, i) => {
    const ceiling = footPerSecond.of(5)["~si"];
    if (velocity <= ceiling) return;
    notices.push({
      code: "pipe-velocity",
      severity: "caution",
      path: ["reaches", i],
      message: `water runs at ${velocity.toFixed(2)} m/s (${format(coherentUnit("velocity").of(velocity), footPerSecond, 2)}) in reach ${i + 1}, above the 5 ft/s that is an ordinary ceiling: more loss and more water hammer. Choose a wider pipe.`,
      actual: `${velocity.toFixed(2)} m/s`,
      limit: "5 ft/s",
      source: commonPractice.at("5 ft/s is an ordinary velocity ceiling", "practice"),
    });
  });
  const share = 1 - n.netHead / n.grossHead;
  if (share > 1 / 3) {
    notices.push({
      code: "pipe-loss",
      severity: "caution",
      path: ["reaches"],
      message: `the pipe loses ${(share * 100).toFixed(0)} % of the fall: past about a third, more flow gives less power. Choose a wider pipe or take less water.`,
      actual: `${(share * 100).toFixed(0)} %`,
      limit: "1/3",
      source: firstPrinciples.at(
        "greatest power where a third of the head is lost, for a loss that goes with the square of the flow",
      ),
    });
  }
  return notices;
}

function currentChecks(plan: Plan, n: Numbers): Notice[] {
  const ampacity = plan.conductor.ampacity;
  // Terminals of equipment up to 100 A are commonly rated for 60 °C only; larger ones for 75 °C.
  const cool = n.current <= 100;
  const allowed = (cool ? ampacity?.at60 : undefined) ?? ampacity?.at75;
  const column = cool && ampacity?.at60 ? 60 : 75;
  if (!ampacity || !allowed) {
    return [
      {
        code: "ampacity-unknown",
        severity: "note",
        path: ["cable", "size"],
        message: `no table of ampacities is held for ${plan.conductor.name}; it carries ${n.current.toFixed(1)} A. Check it against the local code.`,
      },
    ];
  }
  const needed = continuousRating({ current: ampere.of(n.current) });
  if (!needed.greaterThan(allowed)) return [];
  return [
    {
      code: "ampacity-exceeded",
      severity: "stop",
      path: ["cable", "size"],
      message: `${plan.conductor.name} may carry ${format(allowed, ampere, 3)} (${column} °C column), and a continuous ${n.current.toFixed(1)} A asks for ${format(needed, ampere, 3)}. Choose a thicker conductor, to the local code and with a licensed electrician.`,
      actual: format(needed, ampere, 3),
      limit: `at most ${format(allowed, ampere, 3)}`,
      source: ampacity.source,
    },
  ];
}

/** Draws that were left out of the spread, because nothing physical could have them. */
function refusedDraws({ refused, draws }: Spread): Notice[] {
  if (refused === 0) return [];
  return [
    {
      code: "draws-refused",
      severity: "note",
      path: [],
      message: `${refused} of ${draws} draws of the uncertain numbers gave what no scheme can have, such as an efficiency above 1, and were left out: some ± is wider than the number allows. Measure what is uncertain better.`,
      actual: `${refused}`,
      limit: "0",
    },
  ];
}

/** The words of a formula's limit, for someone who runs no code. */
function asSurveyNotice(notice: Notice): Notice {
  return {
    ...notice,
    message: `${notice.message} The figure is an extrapolation.`,
  };
}

/** Formulas that were used more than once, once. */
function once(formulas: Design["formulas"]): Design["formulas"] {
  return Array.from(new Map(formulas.map((each) => [each.id, each])).values());
}

/** Contribution of each reading: that of a measured number is shared out among what it was made of. */
function contributionsOf(
  parameters: readonly Parameter[],
  spread: Spread,
): (Narrowed & { readonly contribution: number })[] {
  return parameters.flatMap(({ key, what, measure, parts }) => {
    const contribution = spread.contributions.get(key);
    if (contribution === undefined) return [];
    return parts
      ? parts.map((part) => ({
          key: part.key,
          what: part.what,
          measure: part.measure,
          contribution: contribution * part.share,
        }))
      : [{ key, what, measure, contribution }];
  });
}

/** A number that the watts owe a part of their spread to. */
interface Narrowed {
  readonly key: string;
  readonly what: string;
  readonly measure: string | undefined;
}

function headlineOf(
  id: string,
  watts: number,
  spread: Spread,
  parameters: readonly Parameter[],
): Headline {
  const sources = new Map<string, number>();
  for (const { key, contribution } of contributionsOf(parameters, spread))
    sources.set(`${id}.${key}`, (sources.get(`${id}.${key}`) ?? 0) + contribution);
  return {
    watts: new Quantity("electric power", watts, sources),
    half: coherentUnit("electric power").of(spread.half),
    k: k95,
    method: spread.method,
  };
}

/** What knowing each number exactly would do, worked out one by one; the three that do most. */
function narrowing(parameters: readonly Parameter[], spread: Spread): Narrowing[] {
  const scale = spread.standard === 0 ? 0 : spread.half / spread.standard;
  return contributionsOf(parameters, spread)
    .filter(({ measure }) => measure !== undefined)
    .flatMap(({ key, what, measure, contribution: c }) => {
      if (c === 0) return [];
      const left = scale * Math.sqrt(Math.max(spread.standard * spread.standard - c * c, 0));
      return [{ key, what, how: measure as string, half: coherentUnit("electric power").of(left) }];
    })
    .toSorted((a, b) => a.half["~si"] - b.half["~si"])
    .slice(0, 3);
}

/** What a gauge before the nozzles reads: the net head less the velocity head of the last reach. */
function runningPressure({
  netHead,
  grossHead,
  staticPressure,
  reaches,
  density,
}: Numbers): number {
  const velocity = reaches.at(-1)?.velocity ?? 0;
  const weight = staticPressure / grossHead;
  // ρ·g is the static pressure over the gross head; ρ·v²/2 the pressure of the velocity.
  return weight * netHead - (density * velocity * velocity) / 2;
}

function present(
  plan: Plan,
  n: Numbers,
  account: Account,
  divert: Design["divert"],
  assumed: readonly Assumed[],
  formulas: Design["formulas"],
): Omit<Design, "headline" | "narrow" | "notices"> {
  const of = <K extends string>(kind: K, value: number): Quantity<K> =>
    coherentUnit(kind).of(value);
  const given = (key: string): AnyQuantity | undefined =>
    plan.parameters.find((p) => p.key === key)?.given as AnyQuantity | undefined;
  return {
    site: plan.survey.site.name ?? plan.survey.id,
    stream: {
      by: plan.flow.by,
      measured: plan.flow.taken.value,
      left: of("volume flow", n.left),
      usable: of("volume flow", n.usable),
    },
    fall: {
      by: plan.fall.by,
      gross: plan.fall.taken.value,
      loss: of("head loss", n.grossHead - n.netHead),
      net: of("net head", n.netHead),
      staticPressure: of("pressure", n.staticPressure),
      runningPressure: of("pressure", runningPressure(n)),
    },
    reaches: plan.reaches.map(({ name, pipe }, i) => {
      const r = n.reaches[i] as Numbers["reaches"][number];
      return {
        name,
        length: given(`reaches.${i + 1}.length`) as unknown as Quantity<"pipe length">,
        bore: given(`reaches.${i + 1}.bore`) as unknown as Quantity<"length">,
        friction: of("head loss", r.friction),
        fittings: of("head loss", r.fittings),
        velocity: of("velocity", r.velocity),
        reynolds: r.reynolds,
        frictionFactor: r.frictionFactor,
        staticPressure: of("pressure", footPressure(plan, n, i)),
        ...(pipe?.pressureRating && { rating: pipe.pressureRating }),
      };
    }),
    jets: {
      nozzles: n.nozzles.map(
        (d, i) =>
          (given(`jets.nozzles.${i + 1}`) as unknown as Quantity<"length"> | undefined) ??
          of("length", d),
      ),
      given: plan.nozzlesGiven,
      flow: of("volume flow", n.flow),
      velocity: of("velocity", n.jetVelocity),
      ...(n.convergence && { convergence: n.convergence }),
    },
    wheel: n.wheelSpeed === undefined ? {} : { speed: of("angular velocity", n.wheelSpeed) },
    account: {
      gross: of("hydraulic power", account.gross),
      losses: account.losses.map(({ name, path, watts }) => ({
        name,
        path,
        power: of("power", watts),
      })),
      delivered: of("electric power", account.delivered),
      waterToWire: of("efficiency", account.delivered / account.gross),
    },
    cable: {
      conductor: plan.conductor.name,
      loop: of("resistance", n.loop),
      current: of("current", n.current),
      machineVolts: of("voltage", n.machineVolts),
      drop: of("voltage", n.current * n.loop),
    },
    divert,
    assumed,
    formulas,
  };
}
