import { commonPractice, firstPrinciples, type Notice } from "@leat/formula";
import {
  type AnyPoint,
  type AnyQuantity,
  isPoint,
  isQuantity,
  type Quantity,
} from "@leat/quantity";

import { fault } from "../refusal.ts";
import type { ProfileInput, ReachInput, StationInput, StretchInput } from "./profile.ts";

/** Who speaks. */
export const what = "profile";

/** Metres in a foot: what a height is off by that was written in the other of the two. */
const foot = 0.3048;

/** A step that is steeper than this, as rise over length, is looked at twice. */
const steep = Math.SQRT1_2;

/** Everything about a profile that cannot be, at once. */
export function profileProblems(input: ProfileInput): Notice[] {
  const { stations, reaches, stretches = [], measured } = input;
  const problems: Notice[] = [];
  if (measured !== "along the slope" && measured !== "across the map")
    problems.push(
      fault(
        what,
        ["measured"],
        `measured = ${JSON.stringify(measured)} is not known. Say whether chainages go "along the slope" or "across the map": on a slope of 45° the two differ by 41 %.`,
      ),
    );
  if (stations.length < 2)
    problems.push(
      fault(
        what,
        ["stations"],
        `stations = ${stations.length}: a pipe has two ends. Give the intake and the nozzle, and what turns between them.`,
      ),
    );
  stations.forEach((station, i) => problems.push(...stationProblems(station, i, stations)));
  if (problems.length > 0) return problems;
  if (measured === "along the slope") problems.push(...tooSteep(stations));
  problems.push(...reachProblems(reaches, stations), ...stretchProblems(stretches, stations));
  return problems;
}

function isLength(value: unknown): value is AnyQuantity {
  return isQuantity(value) && value.kind === "length";
}

function stationProblems(
  station: StationInput,
  i: number,
  stations: readonly StationInput[],
): Notice[] {
  const problems: Notice[] = [];
  const { chainage, elevation } = station as { chainage: unknown; elevation: unknown };
  const before = stations[i - 1];
  if (!isLength(chainage)) {
    problems.push(
      fault(
        what,
        ["stations", i, "chainage"],
        `stations.${i}.chainage = ${String(chainage)} is not a length. Give the distance from the first station.`,
      ),
    );
  } else if (i === 0 && chainage["~si"] !== 0) {
    problems.push(
      fault(
        what,
        ["stations", 0, "chainage"],
        `stations.0.chainage = ${chainage.toString()} is not 0. Count from the mouth of the pipe.`,
      ),
    );
  } else if (before && isLength(before.chainage) && !(chainage["~si"] > before.chainage["~si"])) {
    problems.push(
      fault(
        what,
        ["stations", i, "chainage"],
        `stations.${i}.chainage = ${chainage.toString()} does not lie beyond that of the station before, ${before.chainage.toString()}. List stations from the intake down, each place once.`,
        { actual: chainage.toString(), limit: `above ${before.chainage.toString()}` },
      ),
    );
  }
  if (!isPoint(elevation) || elevation.origin !== "site datum") {
    problems.push(
      fault(
        what,
        ["stations", i, "elevation"],
        `stations.${i}.elevation = ${String(elevation)} is not a height over a site datum. Give a point over it.`,
      ),
    );
    return problems;
  }
  const first = stations[0]?.elevation as AnyPoint | undefined;
  if (
    i > 0 &&
    isPoint(first) &&
    first.origin === "site datum" &&
    elevation.instance !== first.instance
  ) {
    problems.push(
      fault(
        what,
        ["stations", i, "elevation"],
        `stations.${i}.elevation is over ${elevation.instance ?? "no named datum"}, and the first station over ${first.instance ?? "no named datum"}. Level them from one mark.`,
      ),
    );
  }
  return problems;
}

/** Steps that rise or fall by more than their length along the slope: one of the two is in another unit. */
function tooSteep(stations: readonly StationInput[]): Notice[] {
  return stations.flatMap((station, i): Notice[] => {
    const before = stations[i - 1];
    if (!before) return [];
    const length = station.chainage["~si"] - before.chainage["~si"];
    const rise = station.elevation["~si"] - before.elevation["~si"];
    // A hair for the rounding of a plumb pipe.
    if (Math.abs(rise) <= length * (1 + 1e-9)) return [];
    const other = unitSlip(stations, i);
    return [
      fault(
        what,
        ["stations", i, "elevation"],
        `stations.${i}.elevation = ${station.elevation.toString()} is ${round(Math.abs(rise))} m ${rise > 0 ? "above" : "below"} the station before, but the slope between them is ${round(length)} m long. ${other ?? "Check both, and whether chainages go across the map."}`,
        {
          actual: station.elevation.toString(),
          limit: `within ${round(length)} m of the station before`,
        },
      ),
    ];
  });
}

/**
 * Heights that jump up and back, or down and back, steeply, and would not if they were in the other of metre and foot.
 *
 * @param input - The profile.
 * @returns A caution for each.
 */
export function jumpNotices({ stations, measured }: ProfileInput): Notice[] {
  return stations.flatMap((station, i): Notice[] => {
    const slip = unitSlip(stations, i);
    if (slip === undefined) return [];
    return [
      {
        code: `${what}/elevation-jumps`,
        severity: "caution",
        path: ["stations", i, "elevation"],
        message: `${what}: stations.${i}.elevation = ${station.elevation.toString()} jumps away from both neighbours. ${slip}`,
        actual: station.elevation.toString(),
        source: commonPractice.at(`a height that stands apart, chainage ${measured}`, "practice"),
      },
    ];
  });
}

/** What a height that stands apart would be in the other unit, where that lies between its neighbours. */
function unitSlip(stations: readonly StationInput[], i: number): string | undefined {
  const [before, here, after] = [stations[i - 1], stations[i], stations[i + 1]];
  if (!before || !here || !after) return undefined;
  const z = here.elevation["~si"];
  const [a, b] = [before.elevation["~si"], after.elevation["~si"]];
  const into = Math.abs(z - a) / (here.chainage["~si"] - before.chainage["~si"]);
  const out = Math.abs(b - z) / (after.chainage["~si"] - here.chainage["~si"]);
  if ((z - a) * (b - z) >= 0 || Math.min(into, out) < steep) return undefined;
  const low = Math.min(a, b);
  const high = Math.max(a, b);
  // A tenth of the jump either way: the ground between two neighbours is no straight line.
  const play = Math.min(Math.abs(z - a), Math.abs(z - b)) / 10;
  const fits = (n: number): boolean => n >= low - play && n <= high + play;
  if (fits(z * foot))
    return `Taken as feet it would be ${round(z * foot)} m, between the two: was it written in feet?`;
  if (fits(z / foot))
    return `Written in metres among feet it would be ${round(z / foot)} m, between the two: was it?`;
  return undefined;
}

function reachProblems(
  reaches: readonly ReachInput[],
  stations: readonly StationInput[],
): Notice[] {
  const problems: Notice[] = [];
  const end = stations.at(-1) as StationInput;
  if (reaches.length === 0)
    problems.push(fault(what, ["reaches"], "reaches is empty. Give one pipe or more."));
  let from = 0;
  reaches.forEach((reach, i) => {
    const at = `reaches.${i}`;
    const last = i === reaches.length - 1;
    if (!(reach.pipe as unknown) || reach.pipe.material === "not stated") {
      problems.push(
        fault(
          what,
          ["reaches", i, "pipe"],
          `${at}.pipe has no material. Name a pipe that is sold, or give a pipe of one's own with what it is made of: its strength, roughness and stretch go by it.`,
        ),
      );
    }
    const to = reach.to ?? (last ? end.chainage : undefined);
    if (!isLength(to)) {
      problems.push(
        fault(
          what,
          ["reaches", i, "to"],
          `${at}.to is missing. Give the chainage where this pipe ends.`,
        ),
      );
      return;
    }
    if (!(to["~si"] > from)) {
      problems.push(
        fault(
          what,
          ["reaches", i, "to"],
          `${at}.to = ${to.toString()} does not lie beyond where the reach begins. List reaches from the intake down.`,
        ),
      );
    }
    if (to["~si"] > end.chainage["~si"] && !samePlace(to, end.chainage)) {
      problems.push(
        fault(
          what,
          ["reaches", i, "to"],
          `${at}.to = ${to.toString()} lies beyond the last station, ${end.chainage.toString()}. Survey the ground as far as the pipe goes.`,
        ),
      );
    }
    if (last && to["~si"] < end.chainage["~si"] && !samePlace(to, end.chainage)) {
      problems.push(
        fault(
          what,
          ["reaches", i, "to"],
          `${at}.to = ${to.toString()} ends short of the last station, ${end.chainage.toString()}. The pipe is shorter than the profile: add a reach, or take the station out.`,
          { actual: to.toString(), limit: `at least ${end.chainage.toString()}` },
        ),
      );
    }
    const [low, high] = [from, to["~si"]];
    reach.fittings?.forEach((fitting, k) => {
      const place = fitting.at;
      if (place && !(place["~si"] >= low * (1 - 1e-9) && place["~si"] <= high * (1 + 1e-9))) {
        problems.push(
          fault(
            what,
            ["reaches", i, "fittings", k, "at"],
            `${at}.fittings.${k}.at = ${place.toString()} does not lie in this reach. Put the fitting into the reach whose bore its coefficient is for.`,
          ),
        );
      }
      const { count = 1 } = fitting;
      if (
        !(count >= 0) ||
        !isQuantity(fitting.coefficient) ||
        fitting.coefficient.kind !== "coefficient"
      ) {
        problems.push(
          fault(
            what,
            ["reaches", i, "fittings", k],
            `${at}.fittings.${k} has no coefficient, or a number of them below 0. Give a coefficient on the velocity head in this bore.`,
          ),
        );
      }
    });
    from = to["~si"];
  });
  return problems;
}

function stretchProblems(
  stretches: readonly StretchInput[],
  stations: readonly StationInput[],
): Notice[] {
  const end = (stations.at(-1) as StationInput).chainage;
  return stretches.flatMap((stretch, i): Notice[] => {
    const { from, to, warmest, coldest } = stretch;
    const start = stretches[i - 1]?.to;
    const inOrder =
      from["~si"] >= 0 &&
      (!start || from["~si"] >= start["~si"] || samePlace(from, start)) &&
      to["~si"] > from["~si"] &&
      (to["~si"] <= end["~si"] || samePlace(to, end));
    if (!inOrder) {
      return [
        fault(
          what,
          ["stretches", i],
          `stretches.${i} from ${from.toString()} to ${to.toString()} overlaps the one before, runs upwards or ends beyond ${end.toString()}. List stretches from the intake down.`,
        ),
      ];
    }
    if (warmest && coldest && warmest["~si"] < coldest["~si"]) {
      return [
        fault(
          what,
          ["stretches", i, "warmest"],
          `stretches.${i}.warmest = ${warmest.toString()} is below coldest = ${coldest.toString()}. Check the two.`,
          { source: firstPrinciples.at("meaning of the words") },
        ),
      ];
    }
    return [];
  });
}

/** Metres to the centimetre, for a message. */
export function round(metres: number): string {
  return String(Number(metres.toFixed(2)));
}

/** Whether two chainages are one place: a rounding error apart, as 450 ft and 137.16 m are. */
export function samePlace(a: Quantity<"length">, b: Quantity<"length">): boolean {
  return Math.abs(a["~si"] - b["~si"]) <= 1e-9 * Math.max(a["~si"], b["~si"]);
}
