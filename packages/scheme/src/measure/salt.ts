import {
  chlorideNotices,
  compareProbes,
  type SaltCalibration,
  saltCalibration,
  saltConstantRateDischarge,
  saltPlateau,
  saltSlug,
  saltSlugDischarge,
  standardSaltFactor,
} from "@leat/flow-measurement";
import type { Notice } from "@leat/formula";
import { format, kilogramPerCubicMetre, milligramPerLitre, type Quantity } from "@leat/quantity";

import type {
  LoggedSurvey,
  SaltCalibrationSurvey,
  SaltFeedSurvey,
  SaltSurvey,
  SpanSurvey,
} from "../survey.ts";
import type { Taken, Taking } from "./measurement.ts";

/** Salt thrown in at once. */
export function saltFlow(taking: Taking, salt: SaltSurvey): Taken<"volume flow"> {
  const calibration = calibrationOf(taking, "salt", salt);
  const mass = taking.reading(
    "salt.mass",
    { what: "mass of the salt", how: "weigh the salt on a finer scale" },
    salt.mass,
  );
  const slugs = salt.probes.map((probe, i) =>
    atProbe(taking, "salt", probe, i, (onNotice) =>
      saltSlug(
        {
          ...loggedOf(taking, "salt", probe, salt),
          mass,
          calibration,
          ...(salt.window && { window: spanOf(salt.window) }),
          ...(salt.background && { background: { before: spanOf(salt.background) } }),
        },
        { onNotice },
      ),
    ),
  );
  for (const { calibrationFactor, conductivityTime } of slugs)
    taking.sheet(saltSlugDischarge, { mass, calibrationFactor, conductivityTime });
  const greatest = slugs.reduce((a, b) => (b.peakChloride.greaterThan(a.peakChloride) ? b : a));
  chlorideNotices(greatest.peakChloride).forEach(taking.tell);
  for (const { name, peakConcentration, faults, estimatedShare } of slugs) {
    taking.facts.push({
      what: `peak at ${shortName(name)}`,
      value: `${format(peakConcentration, milligramPerLitre, 3)} of salt`,
    });
    const bad = Object.values(faults).reduce(
      (sum, rows) => sum + (rows as ArrayLike<number>).length,
      0,
    );
    if (bad > 0)
      taking.facts.push({
        what: `rows at fault in ${shortName(name)}`,
        value: `${bad}, bridged by straight lines: ${(100 * estimatedShare).toFixed(1)} % of the sum`,
      });
  }
  return { by: "salt slug", value: together(taking, slugs) };
}

/** Salt solution fed in at a steady rate. */
export function saltFeedFlow(taking: Taking, feed: SaltFeedSurvey): Taken<"volume flow"> {
  const calibration = calibrationOf(taking, "saltFeed", feed);
  const rate = taking.reading(
    "saltFeed.rate",
    { what: "rate of the feed", how: "time the feed into a measuring glass, before and after" },
    feed.rate,
  );
  const plateaus = feed.probes.map((probe, i) =>
    atProbe(taking, "salt feed", probe, i, (onNotice) =>
      saltPlateau(
        {
          ...loggedOf(taking, "saltFeed", probe, feed),
          injectionRate: rate,
          injectedConcentration: feed.solution,
          calibration,
          ...(feed.plateau && { plateau: spanOf(feed.plateau) }),
          ...(feed.background && { background: spanOf(feed.background) }),
        },
        { onNotice },
      ),
    ),
  );
  for (const { rise } of plateaus)
    taking.sheet(saltConstantRateDischarge, {
      injectionRate: rate,
      injectedConcentration: feed.solution,
      plateauConcentration: rise.times(calibration?.factor ?? standardSaltFactor()),
      backgroundConcentration: kilogramPerCubicMetre.of(0),
    });
  for (const { name, steady, readingsOnPlateau } of plateaus)
    taking.facts.push({
      what: `plateau at ${shortName(name)}`,
      value: `${readingsOnPlateau} readings, ${steady ? "steady" : "not steady"}`,
    });
  return { by: "salt feed", value: together(taking, plateaus) };
}

/** Works with the record of a probe; what is said of it names its file, and the lines of its rows. */
function atProbe<T>(
  taking: Taking,
  way: "salt" | "salt feed",
  { notes, lines }: LoggedSurvey,
  i: number,
  run: (onNotice: (notice: Notice) => void) => T,
): T {
  const at = [way, "probes", i];
  const tell = taking.telling(at, { lines });
  notes.forEach(tell);
  return taking.guarded(() => run(tell), at, { lines });
}

function shortName(name: string): string {
  return name.replace(/^.*: /u, "").replace(/^.*\//u, "");
}

function spanOf({ from, to }: SpanSurvey): { from: number; to: number } {
  return { from: from["~si"], to: to["~si"] };
}

/** What a logger wrote, as the analyses take it. */
function loggedOf(
  taking: Taking,
  way: string,
  { name, seconds, conductivity, celsius, reads }: LoggedSurvey,
  { temperature }: Pick<SaltSurvey, "temperature">,
): {
  name: string;
  time: Float64Array;
  conductivity: LoggedSurvey["conductivity"];
  basis: "raw" | "at 25 °C";
  temperature?: { celsius: readonly (number | null)[] } | NonNullable<SaltSurvey["temperature"]>;
} {
  const water = celsius ? { celsius } : temperature;
  return {
    name: `${taking.ledger.sourceOf(`${taking.key}.${way}`)}: ${name ?? "probe"}`,
    time: seconds,
    conductivity,
    basis: basisOf(reads),
    ...(water && { temperature: water }),
  };
}

function basisOf(reads: LoggedSurvey["reads"]): "raw" | "at 25 °C" {
  return reads === "raw" ? "raw" : "at 25 °C";
}

function calibrationOf(
  taking: Taking,
  way: string,
  { calibration, probes }: { calibration?: SaltCalibrationSurvey; probes: readonly LoggedSurvey[] },
): SaltCalibration | undefined {
  if (!calibration) return undefined;
  const at = [way === "salt" ? "salt" : "salt feed", "calibration"];
  const rows = {
    lines: calibration.readings.map(({ line }, row) => line ?? row + 1),
    file: calibration.file,
  };
  return taking.guarded(
    () =>
      saltCalibration(
        {
          name: taking.ledger.sourceOf(`${taking.key}.${way}.calibration`),
          water: calibration.water,
          standard: calibration.solution,
          madeWith: calibration.madeWith,
          basis: basisOf((probes[0] as LoggedSurvey).reads),
          readings: calibration.readings,
        },
        { onNotice: taking.telling(at, rows) },
      ),
    at,
    rows,
  );
}

/** One probe with its allowance for mixing, or two compared. */
function together(
  taking: Taking,
  probes: readonly {
    readonly name: string;
    readonly flow: Quantity<"volume flow">;
    readonly flowAtProbe: Quantity<"volume flow">;
  }[],
): Quantity<"volume flow"> {
  const [first, second] = probes;
  if (!first) throw new Error("salt without a probe");
  if (!second) return first.flow;
  const { flow, difference, judged } = compareProbes([first, second], { onNotice: taking.tell });
  taking.facts.push({
    what: "the two probes",
    value: `${(100 * Math.abs(difference["~si"])).toFixed(1)} % apart: ${judged}`,
  });
  return flow;
}
