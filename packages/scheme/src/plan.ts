import { type ConductorMaterial, type Conductor, conductor, conductorsOf } from "@leat/conductors";
import { loopResistance } from "@leat/dc-transmission";
import { commonPractice } from "@leat/formula";
import { roughness } from "@leat/penstock";
import { type Pipe, type PipeClass, pipesOf, readPipe } from "@leat/pipe-sizes";
import { type AnyQuantity, coherentUnit, type Quantity, volt } from "@leat/quantity";
import { readSize } from "@leat/quantity/text";

import { type Assumed, chargingOverNominal, type Default, defaults } from "./assume.ts";
import { isCustomary } from "./customary.ts";
import { fittingCoefficient } from "./fittings.ts";
import { Ledger, type Parameter, type ParameterSpread, rectangle, written } from "./ledger.ts";
import { measureBoth } from "./measure/both-ends.ts";
import type { Measured } from "./measure/measured.ts";
import { leftByRules } from "./stream/left-by-rules.ts";
import type { ReachSurvey, Survey } from "./survey.ts";
import { UnbuildableError } from "./unbuildable.ts";

/** A reach with everything that is fixed about it. */
export interface PlannedReach {
  /** As it is printed. */
  readonly name: string;
  /** The pipe, where it is one that is sold. */
  readonly pipe: Pipe | undefined;
  /** Fittings, each with its coefficient. */
  readonly fittings: readonly {
    readonly name: string;
    readonly coefficient: number;
    readonly count: number;
  }[];
}

/** A survey with everything decided: what is left is numbers. */
export interface Plan {
  /** The survey. */
  readonly survey: Survey;
  /** Numbers, by path. */
  readonly parameters: readonly Parameter[];
  /** What was taken for the user. */
  readonly assumed: readonly Assumed[];
  /** The flow, as it was measured. */
  readonly flow: Measured<"volume flow">;
  /** The fall, as it was measured. */
  readonly fall: Measured<"gross head">;
  /** Whether what stays is a flow or a share. */
  readonly leaveBy: "flow" | "share";
  /** Reaches, from the intake down. */
  readonly reaches: readonly PlannedReach[];
  /** How many nozzles are open. */
  readonly jets: number;
  /** Whether nozzle bores are given, or follow from the flow. */
  readonly nozzlesGiven: boolean;
  /** The conductor. */
  readonly conductor: Conductor;
}

/** Decisions that need a first look at the scheme: they are made once and then held. */
export interface Sizing {
  /** Head lost in a bore, at the flow that may be taken, over the gross head. */
  lossShare(bore: number, roughnessHeight: number, length: number): number;
  /** Static pressure at the bottom. */
  readonly staticPressure: number;
  /** Power lost in a loop of this resistance, over the machine's power. */
  cableShare(resistance: number): number;
}

/** Pipe classes that are tried for a user who names none, thinnest first. */
function pipeClasses(customary: boolean): readonly PipeClass[] {
  return customary
    ? ([17, 13.5, 11, 9, 7] as const).map((dr) => ({ series: "PE IPS", dr }))
    : ([17, 13.6, 11, 9, 7.4] as const).map((sdr) => ({ series: "PE ISO", sdr }));
}

/** Static pressure may take this share of a pipe's rating where the class is chosen for the user. */
const staticShare = 1 / 1.5;

/** Loss that a pipe or a cable is chosen for, where the user names none. */
const lossAimed = { pipe: 0.1, cable: 0.05 };

/**
 * Decides what a survey leaves open and lists it.
 *
 * @param survey - The survey.
 * @param size - A first look at the scheme, for what must be chosen by size; given the numbers so far.
 * @returns The plan.
 */
export function planOf(
  survey: Survey,
  size: (parameters: readonly Parameter[], partial: Omit<Plan, "reaches" | "conductor">) => Sizing,
): Plan {
  const ledger = new Ledger(survey.id);
  const { stream, jets, wheel, machine, cable, bank } = survey;

  const { flow, fall } = measureBoth(survey, ledger);
  ledger.measured(
    "stream.flow",
    {
      what: "flow of the stream",
      kind: "volume flow",
      measure: "gauge the stream again: a notch, or fillings of a vessel, over the season",
    },
    flow.taken.value as unknown as Quantity<string>,
  );
  const leave = (leftByRules(survey, flow, ledger) ?? stream.leave) as AnyQuantity | undefined;
  const leaveBy = leave?.kind === "volume flow" ? "flow" : "share";
  ledger.take(
    "stream.leave",
    {
      kind: leaveBy === "flow" ? "volume flow" : "ratio",
      domain: leaveBy === "flow" ? "non-negative" : "fraction",
      nominal: true,
    },
    leave,
  );
  ledger.measured(
    "fall.gross",
    {
      what: "fall",
      kind: "gross head",
      measure: "level the fall with a rod and close the loop, or read a gauge on a full hose",
    },
    fall.taken.value as unknown as Quantity<string>,
  );

  ledger.take(
    "jets.velocityCoefficient",
    {
      kind: "coefficient",
      domain: "fraction",
      nominal: true,
      measure: "weigh a jet, or fit nozzles with a stated coefficient",
    },
    jets.velocityCoefficient,
  );
  const count = jets.nozzles?.length ?? jets.count ?? 2;
  if (jets.nozzles) {
    jets.nozzles.forEach((bore, i) =>
      ledger.take(
        `jets.nozzles.${i + 1}`,
        {
          kind: "length",
          what: `bore of nozzle ${i + 1}`,
          nominal: true,
          measure: "gauge the nozzle's bore",
        },
        bore,
      ),
    );
  } else if (jets.count === undefined) {
    ledger.assume(
      ["jets", "count"],
      "how many nozzles",
      String(count),
      commonPractice.at("small wheels take one to four", "practice"),
    );
  }
  ledger.take(
    "jets.coefficient",
    {
      kind: "coefficient",
      domain: "fraction",
      nominal: true,
      measure: "time the flow of one nozzle at a known pressure",
    },
    jets.coefficient,
  );
  ledger.take(
    "wheel.efficiency",
    {
      kind: "efficiency",
      domain: "fraction",
      nominal: true,
      measure: "ask the wheel's maker for a test, or measure volts, amps and pressure on the day",
    },
    wheel.efficiency,
  );
  if (wheel.diameter) {
    ledger.take(
      "wheel.diameter",
      { kind: "length", what: "pitch diameter of the wheel", nominal: true },
      wheel.diameter,
    );
    ledger.take("wheel.speedRatio", { kind: "ratio", nominal: true }, wheel.speedRatio);
  }
  ledger.take(
    "machine.efficiency",
    {
      kind: "efficiency",
      domain: "fraction",
      nominal: true,
      measure: "ask the alternator's maker for a bench run at the working volts",
    },
    machine.efficiency,
  );
  takeBank(ledger, bank.volts, bank.charging);
  ledger.take(
    "cable.temperature",
    {
      kind: "absolute zero",
      nominal: true,
      measure: "note whether the cable is buried, shaded or in the sun",
    },
    cable.temperature,
  );
  ledger.take(
    "cable.length",
    { kind: "length", what: "length of the cable, one way", measure: "tape the cable's way" },
    cable.length,
  );

  const partial = {
    survey,
    parameters: ledger.parameters,
    assumed: ledger.assumed,
    flow,
    fall,
    leaveBy,
    jets: count,
    nozzlesGiven: jets.nozzles !== undefined,
  } as const;
  const sizing = size(ledger.parameters, partial);
  const reaches = survey.reaches.map((reach, i) => planReach(ledger, survey, reach, i, sizing));
  const metal = cable.metal ?? assumedMetal(ledger);
  return { ...partial, reaches, conductor: chooseConductor(ledger, survey, metal, sizing) };
}

function takeBank(
  ledger: Ledger,
  volts: Quantity<"voltage">,
  charging: Quantity<"voltage"> | undefined,
): void {
  const { ratio, within, because } = chargingOverNominal;
  const value = charging ?? volt.of(volts.in(volt) * ratio);
  if (!charging)
    ledger.assume(
      ["bank", "charging"],
      "volts at the bank while it is charged",
      `${value.in(volt).toFixed(1)} V, anywhere within ${within * 100} %`,
      because,
    );
  const spread = charging
    ? written(charging)
    : {
        standard: (value["~si"] * within) / Math.sqrt(3),
        shape: "rectangle" as const,
        basis: "assumed" as const,
      };
  ledger.add({
    key: "bank.charging",
    what: "volts at the bank while it is charged",
    value: value["~si"],
    kind: "voltage",
    domain: "positive",
    given: value,
    ...(spread && { spread }),
    measure: "read the bank's volts while it is charged",
  });
}

function planReach(
  ledger: Ledger,
  survey: Survey,
  reach: ReachSurvey,
  i: number,
  sizing: Sizing,
): PlannedReach {
  const key = `reaches.${i + 1}`;
  const path = ["reaches", i];
  ledger.take(
    `${key}.length`,
    {
      kind: "pipe length",
      what: `length of reach ${i + 1}`,
      measure: "chain the pipe's way",
      spreadKey: "reaches.length",
    },
    reach.length.as("pipe length"),
  );
  const pipe =
    reach.pipe !== undefined
      ? readPipe(reach.pipe)
      : reach.bore
        ? undefined
        : choosePipe(ledger, survey, reach, path, sizing);
  const bore = reach.bore ?? (pipe as Pipe).insideDiameter.average;
  // A real pipe's bore lies about the one over the average wall; the least wall admitted is as far as it goes.
  const play =
    pipe && !reach.bore
      ? Math.abs(pipe.insideDiameter.minimumWall["~si"] - pipe.insideDiameter.average["~si"])
      : 0;
  ledger.add({
    key: `${key}.bore`,
    what: `bore of reach ${i + 1}`,
    value: bore["~si"],
    kind: "length",
    domain: "positive",
    given: bore,
    ...(play > 0
      ? { spread: rectangle(play) }
      : written(bore) && { spread: written(bore) as ParameterSpread }),
    measure: "measure the pipe's bore",
  });
  const wall = pipe?.roughness ?? (reach.roughness ? undefined : assumedRoughness(ledger, path));
  const height = reach.roughness ?? (wall as Pipe["roughness"]).typical;
  const half =
    wall && !reach.roughness
      ? Math.min(wall.high["~si"] - wall.typical["~si"], wall.typical["~si"])
      : 0;
  ledger.add({
    key: `${key}.roughness`,
    what: `roughness of reach ${i + 1}`,
    value: height["~si"],
    kind: "length",
    domain: "non-negative",
    given: height,
    ...(half > 0
      ? { spread: rectangle(half) }
      : written(height) && { spread: written(height) as ParameterSpread }),
  });
  const fittings = reach.fittings
    ? reach.fittings.map(({ what, k, count }) => ({
        name: what ?? `K = ${k?.toString()}`,
        coefficient: (k ?? fittingCoefficient(what as string))["~si"],
        count,
      }))
    : i > 0
      ? []
      : assumedFittings(ledger, path);
  if (fittings.length > 0) {
    const spread = fittingSpread(reach.fittings);
    ledger.add({
      key: `${key}.fittings`,
      what: `loss coefficients of the fittings of reach ${i + 1}, over those of the table`,
      value: 1,
      kind: "ratio",
      domain: "positive",
      given: coherentUnit("ratio").of(1),
      spread,
    });
    if (spread.basis === "assumed")
      ledger.assume(
        [...path, "fittings"],
        "spread of the loss coefficients",
        "anywhere within 30 %",
        commonPractice.at("tables of fittings differ by as much", "practice"),
      );
  }
  return { name: pipe?.name ?? `bore ${bore.toString()}`, pipe, fittings };
}

/** Spread of the sum of coefficients, over that sum: as written where every one has its ±, else ± 30 %. */
function fittingSpread(fittings: ReachSurvey["fittings"]): ParameterSpread {
  let sum = 0;
  let variance = 0;
  for (const { k, count } of fittings ?? []) {
    const own = k && written(k);
    if (!own) return rectangle(0.3);
    sum += count * k["~si"];
    variance += (count * own.standard) ** 2;
  }
  return sum > 0
    ? { standard: Math.sqrt(variance) / sum, shape: "normal", basis: "written" }
    : rectangle(0.3);
}

function assumedFittings(
  ledger: Ledger,
  path: readonly (string | number)[],
): PlannedReach["fittings"] {
  const fittings = [
    { name: "square entrance", count: 1 },
    { name: "45 degree elbow", count: 2 },
    { name: "gate valve, fully open", count: 1 },
  ].map((fitting) => ({ ...fitting, coefficient: fittingCoefficient(fitting.name)["~si"] }));
  ledger.assume(
    [...path, "fittings"],
    "fittings",
    fittings.map(({ name, count }) => `${count} × ${name}`).join(", "),
    commonPractice.at("the least that a pipe has", "practice"),
  );
  return fittings;
}

function assumedRoughness(ledger: Ledger, path: readonly (string | number)[]): Pipe["roughness"] {
  const [low, typical, high] = (["low", "typical", "high"] as const).map((column) =>
    roughness.get("polyethylene", column),
  ) as [Quantity<"length">, Quantity<"length">, Quantity<"length">];
  ledger.assume(
    [...path, "roughness"],
    "roughness of the wall, as of polyethylene",
    typical.toString(),
    roughness.definition.source,
  );
  return { low, typical, high };
}

/** The thinnest class that holds the static pressure with room, and in it the narrowest bore that keeps the loss. */
function choosePipe(
  ledger: Ledger,
  survey: Survey,
  reach: ReachSurvey,
  path: readonly (string | number)[],
  sizing: Sizing,
): Pipe {
  const family = pipeClasses(isCustomary(survey));
  let widest: Pipe | undefined;
  for (const choice of family) {
    for (const pipe of pipesOf(choice)) {
      if ((pipe.pressureRating?.["~si"] ?? 0) * staticShare < sizing.staticPressure) continue;
      widest = pipe;
      if (
        sizing.lossShare(
          pipe.insideDiameter.average["~si"],
          pipe.roughness.typical["~si"],
          reach.length["~si"],
        ) <= lossAimed.pipe
      ) {
        ledger.assume(
          [...path, "pipe"],
          `pipe: the narrowest of its class that loses at most ${lossAimed.pipe * 100} % of the fall`,
          pipe.name,
          commonPractice.at("10 % of gross head is an ordinary pipe loss", "practice"),
        );
        return pipe;
      }
    }
  }
  if (!widest) {
    throw new UnbuildableError(
      "pipe-none-strong-enough",
      [...path, "pipe"],
      `no polyethylene pipe of the tables holds ${(sizing.staticPressure / 1e5).toFixed(1)} bar of static pressure with room for more. Name a pipe that does.`,
    );
  }
  ledger.assume(
    [...path, "pipe"],
    `pipe: none of the tables keeps the loss to ${lossAimed.pipe * 100} %; the widest is taken`,
    widest.name,
    commonPractice.at("10 % of gross head is an ordinary pipe loss", "practice"),
  );
  return widest;
}

function assumedMetal(ledger: Ledger): ConductorMaterial {
  const standard = defaults()["cable.metal"] as Default;
  ledger.assume(["cable", "metal"], standard.what, standard.value, standard.because);
  return "copper";
}

/** The conductor that was named, or the thinnest that keeps the loss. */
function chooseConductor(
  ledger: Ledger,
  survey: Survey,
  metal: ConductorMaterial,
  sizing: Sizing,
): Conductor {
  const { cable } = survey;
  if (cable.size !== undefined) return conductor(readSize(cable.size), metal);
  const sizes = isCustomary(survey)
    ? [...conductorsOf("AWG", metal), ...conductorsOf("kcmil", metal)]
    : conductorsOf("mm²", metal);
  const temperature = ledger.parameters.find(({ key }) => key === "cable.temperature") as Parameter;
  const shareOf = (c: Conductor): number =>
    sizing.cableShare(
      loopResistance.body({
        L: cable.length["~si"],
        r: c.resistancePerLength["~si"],
        t1: c.at["~si"],
        α: c.temperatureCoefficient["~si"],
        t2: temperature.value,
      }),
    );
  const found = sizes.find((c) => shareOf(c) <= lossAimed.cable);
  const taken = found ?? sizes.at(-1);
  if (!taken) throw new Error("the table of conductors is empty");
  ledger.assume(
    ["cable", "size"],
    found
      ? `conductor: the thinnest that loses at most ${lossAimed.cable * 100} % of the machine's power`
      : `conductor: none of the table keeps the loss to ${lossAimed.cable * 100} %; the thickest is taken`,
    taken.name,
    commonPractice.at("3 to 5 % is an ordinary cable loss", "practice"),
  );
  return taken;
}
