import { type ConductorMaterial, type Conductor, conductor, conductorsOf } from "@leat/conductors";
import { loopResistance } from "@leat/dc-transmission";
import { type Citation, commonPractice, type Domain, firstPrinciples } from "@leat/formula";
import { roughness } from "@leat/penstock";
import { type Pipe, type PipeClass, pipesOf, readPipe } from "@leat/pipe-sizes";
import {
  type AnyPoint,
  type AnyQuantity,
  coherentUnit,
  isPoint,
  type Quantity,
  volt,
} from "@leat/quantity";
import { read, readSize } from "@leat/quantity/text";

import {
  type Assumed,
  chargingOverNominal,
  type Default,
  defaults,
  readingSpread,
} from "./assume.ts";
import { fittingCoefficient } from "./fittings.ts";
import type { ReachSurvey, Survey } from "./survey.ts";
import { UnbuildableError } from "./unbuildable.ts";
import { k95 } from "./uncertainty.ts";

/** How a number may lie about its value. */
export interface ParameterSpread {
  /** Standard uncertainty, in the coherent unit. */
  readonly standard: number;
  /** Shape of the distribution. */
  readonly shape: "normal" | "rectangle";
  /** What it rests on. */
  readonly basis: "written" | "instrument" | "assumed" | "repeats";
}

/** A number that a scheme is worked out of. */
export interface Parameter {
  /** Its path, as one word: `fall.gross`. */
  readonly key: string;
  /** What it is, in words. */
  readonly what: string;
  /** Value in the coherent unit, or over the origin of a point. */
  readonly value: number;
  /** Its kind, or the kind of the difference of its points. */
  readonly kind: string;
  /** What physics allows. */
  readonly domain: Domain;
  /** How it may lie; absent where it is a choice and not a reading. */
  readonly spread?: ParameterSpread;
  /** As it was written or assumed. */
  readonly given: AnyQuantity | AnyPoint;
  /** How to know it better, for those that can be measured. */
  readonly measure?: string;
}

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
  /** How the flow is known. */
  readonly flowBy: "stated" | "V notch" | "rectangular notch" | "timed volume";
  /** How the fall is known. */
  readonly fallBy: "stated" | "gauge";
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

/** Collects numbers and what was assumed of them. */
class Ledger {
  readonly parameters: Parameter[] = [];
  readonly assumed: Assumed[] = [];
  readonly #defaults = defaults();

  /** Notes that something was taken for the user. */
  assume(
    path: readonly (string | number)[],
    what: string,
    value: string,
    because: Citation | undefined,
  ): void {
    this.assumed.push({ path, what, value, because });
  }

  /** A number from a given quantity or point, or from the default of its path. */
  take(
    key: string,
    about: {
      kind: string;
      domain?: Domain;
      what?: string;
      measure?: string;
      nominal?: boolean;
      spreadKey?: string;
    },
    given: AnyQuantity | AnyPoint | undefined,
  ): Parameter {
    const path = pathOf(key);
    const standard = this.#defaults[key];
    const value = given ?? this.#fromDefault(key, about.kind, standard);
    const spread = given
      ? about.nominal
        ? written(given)
        : (written(given) ??
          this.#fromReading(path, about.spreadKey ?? key, about.what ?? key, given))
      : standard?.within === undefined
        ? undefined
        : rectangle(halfWidth(standard.within, value));
    const parameter: Parameter = {
      key,
      what: about.what ?? standard?.what ?? key,
      value: value["~si"],
      kind: about.kind,
      domain: about.domain ?? "positive",
      given: value,
      ...(spread && { spread }),
      ...(about.measure !== undefined && { measure: about.measure }),
    };
    this.parameters.push(parameter);
    return parameter;
  }

  /** A number that is worked out, not written. */
  add(parameter: Parameter): void {
    this.parameters.push(parameter);
  }

  #fromDefault(key: string, kind: string, standard: Default | undefined): AnyQuantity | AnyPoint {
    if (!standard) throw new Error(`no default for ${key}`);
    this.assume(
      pathOf(key),
      standard.what,
      standard.within ? `${standard.value}, anywhere within ${standard.within}` : standard.value,
      standard.because,
    );
    return kind === "absolute zero"
      ? read(standard.value, "absolute zero")
      : read(standard.value, kind);
  }

  /**
   * A reading without ±: the division of its instrument, from the digits written where none is named, or a
   * spread that is assumed. What is assumed is listed. A gauge has both, its class and its division.
   */
  #fromReading(
    path: readonly (string | number)[],
    spreadKey: string,
    what: string,
    given: AnyQuantity | AnyPoint,
  ): ParameterSpread | undefined {
    const reading = given["~reading"];
    const unit = "kind" in given ? given["~unit"] : undefined;
    const named = reading !== undefined && !reading.assumed;
    const share = readingSpread[spreadKey];
    const taken = share && (share.class || !named) ? share : undefined;
    const division =
      reading && unit && (named || !share) ? unit.toSI(reading.resolution) / 2 / Math.sqrt(3) : 0;
    if (division > 0 && !named)
      this.assume(
        path,
        `division of the instrument: ${what}`,
        `${reading?.resolution} ${unit?.symbol}, from the digits written`,
        commonPractice.at("nobody writes finer than can be read", "practice"),
      );
    if (taken)
      this.assume(
        path,
        `spread of the ${what}`,
        `± ${taken.share * 100} %`,
        commonPractice.at(taken.why, "practice"),
      );
    const standard = Math.hypot(division, (Math.abs(given["~si"]) * (taken?.share ?? 0)) / k95);
    if (standard === 0) return undefined;
    return {
      standard,
      shape: taken ? "normal" : "rectangle",
      basis: taken || !named ? "assumed" : "instrument",
    };
  }
}

/** `reaches.1.length` → reaches, 0, length: rows are counted from 1 in a key and from 0 in a path. */
function pathOf(key: string): (string | number)[] {
  return key.split(".").map((part) => (/^\d+$/u.test(part) ? Number(part) - 1 : part));
}

function rectangle(half: number): ParameterSpread {
  return { standard: half / Math.sqrt(3), shape: "rectangle", basis: "assumed" };
}

/** Half width of a default's spread: text in a unit; a percentage of something that is no ratio is a share of it. */
function halfWidth(text: string, value: AnyQuantity | AnyPoint): number {
  if (isPoint(value)) return (read(text, "temperature difference") as AnyQuantity)["~si"];
  return (read(text, value.kind) as AnyQuantity)["~si"];
}

/** A spread that was written with the value. */
function written(given: AnyQuantity | AnyPoint): ParameterSpread | undefined {
  const sources = given["~sources"];
  if (!sources) return undefined;
  let variance = 0;
  for (const c of sources.values()) variance += c * c;
  return {
    standard: Math.sqrt(variance),
    shape: given["~reading"]?.spread?.shape === "rectangle" ? "rectangle" : "normal",
    basis: "written",
  };
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
  const ledger = new Ledger();
  const { site, stream, jets, wheel, machine, cable, bank } = survey;

  ledger.take(
    "site.waterTemperature",
    { kind: "absolute zero", measure: "put a thermometer in the stream", nominal: true },
    site.waterTemperature,
  );
  assumeSite(ledger, survey);
  const flowBy = takeFlow(ledger, survey);
  const leave = stream.leave as AnyQuantity | undefined;
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
  const fallBy = takeFall(ledger, survey);

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
    flowBy,
    fallBy,
    leaveBy,
    jets: count,
    nozzlesGiven: jets.nozzles !== undefined,
  } as const;
  const sizing = size(ledger.parameters, partial);
  const reaches = survey.reaches.map((reach, i) => planReach(ledger, survey, reach, i, sizing));
  const metal = cable.metal ?? assumedMetal(ledger);
  return { ...partial, reaches, conductor: chooseConductor(ledger, survey, metal, sizing) };
}

/** Gravity and air of the site, where the survey does not say where it is. */
function assumeSite(ledger: Ledger, { site }: Survey): void {
  if (!site.latitude)
    ledger.assume(
      ["site", "latitude"],
      "gravity",
      "9.80665 m/s²; with the latitude it is worked out, and lies within 0.3 % of that",
      firstPrinciples.at("standard gravity, exact by convention"),
    );
  if (!site.elevation)
    ledger.assume(
      ["site", "elevation"],
      "height over the sea, for gravity and the pressure of the air",
      "0 m",
      commonPractice.at("it moves the density of water by millionths", "practice"),
    );
}

function takeFlow(ledger: Ledger, { stream }: Survey): Plan["flowBy"] {
  const measure = "gauge the stream again: a notch, or fillings of a vessel, over the season";
  if (stream.notch) {
    const { shape, head, angle, width, sill, channel } = stream.notch;
    ledger.take(
      "stream.notch.head",
      {
        kind: "length",
        what: "head over the notch",
        measure: "read the head to a finer division, from a level peg four heads upstream",
      },
      head,
    );
    if (shape === "V")
      ledger.take(
        "stream.notch.angle",
        { kind: "angle", what: "angle of the notch", nominal: true },
        angle,
      );
    else
      ledger.take(
        "stream.notch.width",
        { kind: "length", what: "width of the notch", nominal: true },
        width,
      );
    const open = shape === "V" ? head.times(5) : (width as Quantity<"length">).plus(head.times(4));
    if (!sill)
      ledger.assume(
        ["stream", "notch", "sill"],
        "sill over the bed of the channel",
        `${head.times(2.5).toString()}: deep enough for the formula; look at it`,
        commonPractice.at("deep enough for the formula", "practice"),
      );
    if (!channel)
      ledger.assume(
        ["stream", "notch", "channel"],
        "width of the channel",
        `${open.toString()}: fully contracted; look at it`,
        commonPractice.at("fully contracted", "practice"),
      );
    ledger.take(
      "stream.notch.sill",
      { kind: "length", what: "sill over the bed", nominal: true },
      sill ?? head.times(2.5),
    );
    ledger.take(
      "stream.notch.channel",
      { kind: "length", what: "width of the channel", nominal: true },
      channel ?? open,
    );
    ledger.add({
      key: "stream.notch.equation",
      what: "the notch's discharge equation",
      value: 1,
      kind: "ratio",
      domain: "positive",
      given: coherentUnit("ratio").of(1),
      spread: { standard: 0.02 / k95, shape: "normal", basis: "assumed" },
    });
    ledger.assume(
      ["stream", "notch"],
      "spread of the notch's discharge equation",
      "± 2 %",
      commonPractice.at("a plate that is sharp, plumb and level", "practice"),
    );
    return shape === "V" ? "V notch" : "rectangular notch";
  }
  if (stream.bucket) {
    const flows = stream.bucket.map(({ volume, time }) => volume["~si"] / time["~si"]);
    const n = flows.length;
    const mean = flows.reduce((a, b) => a + b, 0) / n;
    const scatter = Math.sqrt(
      flows.reduce((sum, q) => sum + (q - mean) ** 2, 0) / Math.max(n - 1, 1) / n,
    );
    // Few repeats know their own scatter badly: Student's factor over the normal one, from a printed table.
    const student =
      [Number.NaN, 12.706, 4.303, 3.182, 2.776, 2.571, 2.447, 2.365, 2.306][n - 1] ?? 2.262;
    const repeats = n > 1 ? (scatter * student) / k95 : 0.1 * mean;
    const clock = Math.hypot(
      ...stream.bucket.map(({ time }) => (written(time)?.standard ?? 0) / time["~si"] / n),
    );
    const vessel = stream.bucket.every(({ volume }) => written(volume))
      ? Math.max(
          ...stream.bucket.map(
            ({ volume }) => (written(volume) as ParameterSpread).standard / volume["~si"],
          ),
        )
      : undefined;
    if (n === 1)
      ledger.assume(
        ["stream", "bucket"],
        "spread of a single filling",
        "± 20 %",
        commonPractice.at("one filling shows no scatter", "practice"),
      );
    // One vessel is filled each time: its error does not average out.
    if (vessel === undefined)
      ledger.assume(
        ["stream", "bucket"],
        "spread of the vessel's volume",
        "± 3 %",
        commonPractice.at("a marked bucket", "practice"),
      );
    ledger.add({
      key: "stream.bucket",
      what: "flow by timed volume, over the mean of the fillings",
      value: 1,
      kind: "ratio",
      domain: "positive",
      given: coherentUnit("ratio").of(1),
      spread: {
        standard: Math.hypot(repeats / mean, clock, vessel ?? 0.03 / k95),
        shape: "normal",
        basis: "repeats",
      },
      measure: "time more fillings, and measure the vessel",
    });
    return "timed volume";
  }
  ledger.take(
    "stream.flow",
    { kind: "volume flow", what: "flow of the stream", measure },
    stream.flow,
  );
  return "stated";
}

function takeFall(ledger: Ledger, { fall }: Survey): Plan["fallBy"] {
  if (fall.gauge) {
    ledger.take(
      "fall.gauge",
      {
        kind: "pressure",
        what: "gauge reading at the bottom",
        measure: "read a gauge of a finer class, and check its zero",
      },
      fall.gauge,
    );
    if (fall.gaugeAbove)
      ledger.take(
        "fall.gaugeAbove",
        {
          kind: "length",
          what: "height of the gauge over the nozzles",
          domain: "any",
          nominal: true,
        },
        fall.gaugeAbove,
      );
    return "gauge";
  }
  ledger.take(
    "fall.gross",
    {
      kind: "length",
      what: "fall",
      measure: "level the fall with a rod and close the loop, or read a gauge on a full hose",
    },
    fall.gross,
  );
  return "stated";
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

/** Whether a length was written in US customary units. */
function isCustomary(length: AnyQuantity): boolean {
  return ["ft", "in", "yd", "mi"].includes(length["~unit"]?.symbol ?? "m");
}

/** The thinnest class that holds the static pressure with room, and in it the narrowest bore that keeps the loss. */
function choosePipe(
  ledger: Ledger,
  { fall }: Survey,
  reach: ReachSurvey,
  path: readonly (string | number)[],
  sizing: Sizing,
): Pipe {
  const first = (fall.gross ?? reach.length) as AnyQuantity;
  const family = pipeClasses(isCustomary(first));
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
  { cable }: Survey,
  metal: ConductorMaterial,
  sizing: Sizing,
): Conductor {
  if (cable.size !== undefined) return conductor(readSize(cable.size), metal);
  const sizes = isCustomary(cable.length)
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
