import {
  type Citation,
  commonPractice,
  type Notice,
  type Severity,
  source,
  type Source,
} from "@leat/formula";

import type { Numbers } from "./compute.ts";
import type { Plan } from "./plan.ts";
import type { FieldSurvey } from "./survey.ts";

/** What a caution looks at. */
export interface Facts {
  /** What was decided. */
  readonly plan: Plan;
  /** The numbers, in coherent units. */
  readonly numbers: Numbers;
}

/** A caution as data: its code, when it is given, what it says, where it comes from. */
export interface Caution {
  /** Stable code. */
  readonly code: string;
  /** How much it weighs. */
  readonly severity: Severity;
  /** Where in the survey. */
  readonly path: readonly string[];
  /** When it is given. */
  readonly when: (facts: Facts) => boolean;
  /** What it says. */
  readonly text: string;
  /** Where it comes from. */
  readonly source: Citation;
}

/** IEC 61140 and IEC 60364-4-41, on volts that may be touched. */
export const iec60364: Source = /* @__PURE__ */ source({
  id: "iec-60364-4-41",
  by: "IEC 60364-4-41",
  title: "Low-voltage electrical installations: protection against electric shock",
  edition: "414.4.5",
});

/** IEC 61558-1, which the vocabulary of IEC 60050 takes extra-low voltage from. */
export const iec61558: Source = /* @__PURE__ */ source({
  id: "iec-61558-1",
  by: "IEC 61558-1",
  title: "Safety of transformers, reactors, power supply units and combinations thereof",
  edition: "2005",
});

/** Volts of direct current that may be touched without basic protection. */
const touchVolts = { dry: 60, wet: 30 };

/** Volts of ripple-free direct current where extra-low voltage ends. */
const extraLowVolts = 120;

/** Open-circuit volts of a permanent-magnet machine at runaway, over its working volts. */
export const openCircuitRatio = 3;

/** A caution of the field: it looks at what was measured alone. */
export interface FieldCaution extends Omit<Caution, "when"> {
  /** When it is given. */
  readonly when: (survey: FieldSurvey) => boolean;
}

/**
 * Every caution that measuring may be given. Each defers to local codes and the regulator.
 *
 * @returns The cautions.
 */
export function fieldCautions(): readonly FieldCaution[] {
  const practice = commonPractice.at("usual cautions of the trade", "practice");
  return [
    {
      code: "moving-water",
      severity: "caution",
      path: ["stream"],
      when: () => true,
      text: "Moving water knocks people down and holds them against screens. Do not gauge in water above the knee, do not work alone, keep clear of a running intake.",
      source: practice,
    },
    {
      code: "impounding",
      severity: "caution",
      path: ["stream", "notch"],
      when: ({ stream }) =>
        stream.board !== undefined ||
        stream.measured.some(({ notch, crest }) => notch !== undefined || crest !== undefined),
      text: "A notch or a crest holds water back. What stands behind it must be safe when it fails; impounding may need a permit.",
      source: practice,
    },
    {
      code: "salt-in-stream",
      severity: "caution",
      path: ["stream", "salt"],
      when: ({ stream }) =>
        stream.measured.some(({ salt, saltFeed }) => salt !== undefined || saltFeed !== undefined),
      text: "Salt in a stream harms what lives in it and what is watered from it. Ask the regulator first, use no more than the probes need, dissolve it, and tell whoever draws water downstream.",
      source: practice,
    },
  ];
}

/**
 * Notices for every caution of the field that a survey triggers.
 *
 * @param survey - What was measured.
 * @returns The notices.
 */
export function fieldCautionNotices(survey: FieldSurvey): Notice[] {
  return fieldCautions()
    .filter(({ when }) => when(survey))
    .map(({ code, severity, path, text, source: from }) => ({
      code,
      severity,
      path,
      message: text,
      source: from,
    }));
}

/**
 * Every caution that a scheme may be given. Each defers to local codes and licensed practice.
 *
 * @returns The cautions.
 */
export function cautions(): readonly Caution[] {
  const practice = commonPractice.at("usual cautions of the trade", "practice");
  const always = (): boolean => true;
  const leadAcid = ({ plan }: Facts): boolean =>
    plan.survey.bank.chemistry?.endsWith("lead-acid") ?? true;
  const lithium = ({ plan }: Facts): boolean =>
    plan.survey.bank.chemistry === "lithium iron phosphate" ||
    plan.survey.bank.chemistry === undefined;
  const plastic = ({ plan }: Facts): boolean =>
    plan.reaches.some(({ pipe }) => pipe === undefined || pipe.series !== "own");
  const polyethylene = ({ plan }: Facts): boolean =>
    plan.reaches.some(({ pipe }) => pipe?.series.startsWith("PE") ?? false);
  return [
    {
      code: "water-right",
      severity: "caution",
      path: ["stream", "leave"],
      when: always,
      text: "Taking water needs a right, and works in a stream a permit; fish and their seasons may forbid either. The regulator says how much may be taken, not this sheet.",
      source: practice,
    },
    {
      code: "residual-flow-unset",
      severity: "caution",
      path: ["stream", "leave"],
      when: ({ plan }) => plan.survey.stream.leave === undefined,
      text: "Nothing is said of what stays in the stream, and a placeholder was taken. Ask the regulator what must stay, and enter it (stream.leave) before the pipe is chosen.",
      source: practice,
    },
    ...fieldCautions().map(({ when, ...caution }) => ({
      ...caution,
      when: ({ plan }: Facts): boolean => when(plan.survey),
    })),
    {
      code: "trench",
      severity: "caution",
      path: ["reaches"],
      when: always,
      text: "Trench walls fall in without warning. Support or slope them as the local code says, and let nobody work in one alone.",
      source: practice,
    },
    {
      code: "stored-energy",
      severity: "caution",
      path: ["reaches"],
      when: always,
      text: "A full pipe under pressure, and a long column of moving water, hold energy. Open and shut valves slowly; drain the pressure before undoing any joint.",
      source: practice,
    },
    {
      code: "vacuum",
      severity: "caution",
      path: ["reaches"],
      when: plastic,
      text: "A pipe that drains against a blocked intake can be sucked flat. Let air in below the intake through a vent that cannot be shut.",
      source: practice,
    },
    {
      code: "joining-and-pulling",
      severity: "caution",
      path: ["reaches"],
      when: polyethylene,
      text: "Fusion plates burn; a string of pipe on a slope can run away downhill and a pulling line can part. Anchor the string before cutting it loose, stand clear of the line, follow the fusion procedure of the pipe's maker.",
      source: practice,
    },
    {
      code: "rotating",
      severity: "caution",
      path: ["wheel"],
      when: always,
      text: "When the load is lost the wheel runs away to nearly twice its speed. Guard it, and keep wheel and machine within what their makers allow at runaway.",
      source: practice,
    },
    {
      code: "touch-volts",
      severity: "caution",
      path: ["machine"],
      when: ({ numbers }) => openCircuitRatio * numbers.machineVolts > touchVolts.wet,
      text: `With the load lost a permanent-magnet machine can show ${openCircuitRatio} times its working volts: above the ${touchVolts.wet} V of direct current that may be touched where it is wet, as a wheel house is, and as a rule above the ${touchVolts.dry} V of a dry place. Enclose it, and test what is connected to it at those volts.`,
      source: iec60364.at(
        `${touchVolts.dry} V direct current in dry places, ${touchVolts.wet} V elsewhere`,
        "secondary",
      ),
    },
    {
      code: "above-extra-low-voltage",
      severity: "caution",
      path: ["machine"],
      when: ({ numbers }) => openCircuitRatio * numbers.machineVolts > extraLowVolts,
      text: `The open-circuit volts can pass ${extraLowVolts} V of direct current, where extra-low voltage ends: other rules apply, and a licensed electrician must do the work.`,
      source: iec61558.at("3.7.16"),
    },
    {
      code: "dc-arc",
      severity: "caution",
      path: ["cable"],
      when: always,
      text: "Direct current holds an arc. Use switches, fuses and breakers rated for direct current at the open-circuit volts; have the wiring done or checked by a licensed electrician to the local code.",
      source: practice,
    },
    {
      code: "bank-short-circuit",
      severity: "caution",
      path: ["bank"],
      when: always,
      text: "A battery bank feeds a short circuit with thousands of amps. Fuse it at its terminals, cover them, take off rings and use insulated tools.",
      source: practice,
    },
    {
      code: "bank-heat",
      severity: "caution",
      path: ["bank"],
      when: always,
      text: "Batteries age in heat, and overcharged hot they can run away. Keep the charge volts compensated for temperature as their maker says.",
      source: practice,
    },
    {
      code: "bank-hydrogen",
      severity: "caution",
      path: ["bank"],
      when: leadAcid,
      text: "Lead-acid batteries give off hydrogen while they are charged, and acid burns. Ventilate to the outside as the local code says; no sparks or flames near them.",
      source: practice,
    },
    {
      code: "bank-lithium",
      severity: "caution",
      path: ["bank"],
      when: lithium,
      text: "A lithium bank takes no charge below freezing, and its management system can disconnect it while the machine runs: the volts then rise at once. Everything on the bus must bear it, or a second path must hold it.",
      source: practice,
    },
    {
      code: "diversion-can-open",
      severity: "caution",
      path: ["divert"],
      when: always,
      text: "The diversion load must never be lost, and its own fuse, switch or thermostat can open. Protect its conductors as the code requires, and give it a second, independent means.",
      source: practice,
    },
    {
      code: "second-path-missing",
      severity: "caution",
      path: ["divert", "second"],
      when: ({ plan }) => plan.survey.divert.second === undefined,
      text: "No second, independent path for the machine's power is named. Name one (divert.second) before anything is connected.",
      source: practice,
    },
    {
      code: "hot-water",
      severity: "caution",
      path: ["divert", "tank"],
      when: ({ plan }) => plan.survey.divert.tank !== undefined,
      text: "A tank heated by surplus can boil and can scald, and a lukewarm one grows Legionella. Fit a temperature and pressure relief valve, piped to a safe place with nothing that can shut it, and a mixing valve; let a licensed plumber see it.",
      source: practice,
    },
    {
      code: "resistor-fire",
      severity: "caution",
      path: ["divert"],
      when: always,
      text: "Heating elements and resistors set fire to what is near them, and an element out of water fails. Mount air heaters on what does not burn, with room for the air.",
      source: practice,
    },
    {
      code: "element-over-volts",
      severity: "caution",
      path: ["divert", "element"],
      when: ({ plan, numbers }) =>
        (plan.survey.divert.element?.volts["~si"] ?? Infinity) < numbers.machineVolts,
      text: "The element is rated for less than the volts that it will see: it takes more than its rated power and burns out. Choose one for higher volts, or put two in series.",
      source: practice,
    },
    {
      code: "lightning",
      severity: "caution",
      path: ["cable"],
      when: always,
      text: "A cable up a hillside brings lightning in. Fit arresters at both ends, and earth and bond frames, pipe and bus as the local code says; dry or rocky ground makes a poor earth.",
      source: practice,
    },
  ];
}

/**
 * The cautions that a scheme is given.
 *
 * @param facts - The scheme.
 * @returns Notices.
 */
export function cautionNotices(facts: Facts): Notice[] {
  return cautions()
    .filter(({ when }) => when(facts))
    .map(({ code, severity, path, text, source: from }) => ({
      code,
      severity,
      path,
      message: text,
      source: from,
    }));
}
