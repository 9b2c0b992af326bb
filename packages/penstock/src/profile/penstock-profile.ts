import { type CallOptions, commonPractice, type Notice } from "@leat/formula";
import { boreOf } from "@leat/pipe-sizes";
import { metre, type Point, type Quantity, radian } from "@leat/quantity";

import { fault, refuseIf } from "../refusal.ts";
import { jumpNotices, profileProblems, round, samePlace, what } from "./profile-problems.ts";
import type {
  FittingInput,
  Profile,
  ProfileFitting,
  ProfileInput,
  ProfileReach,
  ProfileStation,
  ProfileStretch,
  StationInput,
} from "./profile.ts";
import { slopeLength } from "./slope-length.ts";
import { turningPointsOf } from "./turning-points.ts";

/** A place before pipe is laid on it. */
interface Place {
  readonly name: string | undefined;
  readonly row: number | undefined;
  readonly chainage: Quantity<"length">;
  readonly elevation: Point<"site datum">;
  /** Length along the slope from the first station. */
  readonly slope: Quantity<"pipe length">;
}

/**
 * A pipe down a hillside: where it lies, how long it is, where it turns up and down.
 *
 * Chainages along the slope are lengths of pipe; those across a map are made into such by Pythagoras, step by step. The ground between
 * two stations is taken as straight: a hump that no station stands on is not known. Where a reach has more pipe than ground, the pipe is
 * taken to be spread evenly along it.
 *
 * @param input - Stations, reaches, and how the pipe lies.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns The profile.
 * @throws NonPhysicalError stations out of order or over two datums, a step that rises by more than its length, a reach without a
 * material, a pipe that is shorter than the ground, a fitting outside its reach; all of them at once, each with its row.
 * @example
 * ```ts
 * import { penstockProfile } from "@leat/penstock";
 * import { readPipe } from "@leat/pipe-sizes";
 * import { foot, point } from "@leat/quantity";
 *
 * const at = (chainage: number, height: number) => ({
 *   chainage: foot.of(chainage),
 *   elevation: point("site datum", foot.of(height), "peg 1"),
 * });
 * const profile = penstockProfile({
 *   stations: [at(0, 140), at(300, 90), at(450, 96), at(900, 20)],
 *   measured: "across the map",
 *   reaches: [{ pipe: readPipe("4 in PE DR 17"), to: foot.of(450) }, { pipe: readPipe("4 in PE DR 11") }],
 * });
 * profile.length.in(foot).toFixed(1); // => "910.6"
 * [profile.lowPoints, profile.highPoints]; // => [[1], [2]]
 * ```
 */
export function penstockProfile(input: ProfileInput, options: CallOptions = {}): Profile {
  refuseIf(profileProblems(input));
  const places = placesOf(input);
  const laid = layReaches(input, places);
  refuseIf(laid.problems);
  const stations = laid.distances.map((distance, i) =>
    stationOf(places, laid.distances, distance, i),
  );
  const turnDepth = input.turnDepth ?? narrowestBore(input, options);
  const turns = turningPointsOf(
    stations.map(({ elevation }) => elevation["~si"]),
    turnDepth["~si"],
  );
  const notices = jumpNotices(input);
  for (const notice of notices) options.onNotice?.(notice);
  return {
    stations,
    reaches: laid.reaches,
    stretches: stretchesOf(input, places, laid.distances),
    length: laid.distances.at(-1) as Quantity<"pipe length">,
    highPoints: turns.high,
    lowPoints: turns.low,
    turnDepth,
    notices,
  };
}

/** All chainages that matter, in order, each with its height and its length along the slope. */
function placesOf({ stations, reaches, measured, stretches = [] }: ProfileInput): Place[] {
  const between: Quantity<"length">[] = [];
  const add = (chainage: Quantity<"length"> | undefined): void => {
    if (!chainage) return;
    const known = [...between, ...stations.map((station) => station.chainage)];
    if (!known.some((one) => samePlace(one, chainage))) between.push(chainage);
  };
  for (const { to, fittings = [] } of reaches) {
    add(to);
    for (const { at } of fittings) add(at);
  }
  for (const { from, to } of stretches) {
    add(from);
    add(to);
  }
  const places: Place[] = [];
  stations.forEach((station, row) => {
    const before = stations[row - 1];
    const start = places.at(-1);
    if (!before || !start) {
      places.push(placeOf(station, row, metre.of(0).as("pipe length")));
      return;
    }
    const step = stepLength(before, station, measured);
    const span = station.chainage["~si"] - before.chainage["~si"];
    const inside = between
      .filter((c) => c["~si"] > before.chainage["~si"] && c["~si"] < station.chainage["~si"])
      .toSorted((a, b) => a["~si"] - b["~si"]);
    const rise = station.elevation.minus(before.elevation);
    for (const chainage of inside) {
      const share = (chainage["~si"] - before.chainage["~si"]) / span;
      places.push({
        name: undefined,
        row: undefined,
        chainage,
        elevation: before.elevation.plus(rise.times(share)),
        slope: start.slope.plus(step.times(share)),
      });
    }
    places.push(placeOf(station, row, start.slope.plus(step)));
  });
  return places;
}

function placeOf(station: StationInput, row: number, slope: Quantity<"pipe length">): Place {
  const { name, chainage, elevation } = station;
  return { name, row, chainage, elevation, slope };
}

/** Length along the slope between two stations. */
function stepLength(
  from: StationInput,
  to: StationInput,
  measured: ProfileInput["measured"],
): Quantity<"pipe length"> {
  const step = to.chainage.minus(from.chainage);
  return measured === "along the slope"
    ? step.as("pipe length")
    : slopeLength({ planDistance: step, rise: to.elevation.minus(from.elevation) });
}

/** Lays the reaches along the places: their fittings, and how far along the pipe each place is. */
function layReaches(
  { reaches, stations }: ProfileInput,
  places: readonly Place[],
): { reaches: ProfileReach[]; distances: Quantity<"pipe length">[]; problems: Notice[] } {
  const end = (stations.at(-1) as StationInput).chainage;
  const find = (chainage: Quantity<"length">): number =>
    places.findIndex((place) => samePlace(place.chainage, chainage));
  const distances: Quantity<"pipe length">[] = [metre.of(0).as("pipe length")];
  const problems: Notice[] = [];
  let first = 0;
  const laid = reaches.map((reach, i): ProfileReach => {
    const last = find(reach.to ?? end);
    const [from, to] = [places[first] as Place, places[last] as Place];
    const ground = to.slope.minus(from.slope);
    const length = reach.length ?? ground;
    // A hair for the rounding of lengths that were added up.
    if (length["~si"] < ground["~si"] * (1 - 1e-9)) {
      problems.push(
        fault(
          what,
          ["reaches", i, "length"],
          `reaches.${i}.length = ${length.toString()} is shorter than the ground it lies on, ${round(ground["~si"])} m. Check whether its length was scaled off a map, and the unit.`,
          { actual: length.toString(), limit: `at least ${round(ground["~si"])} m` },
        ),
      );
    }
    const start = distances.at(-1) as Quantity<"pipe length">;
    for (let k = first + 1; k <= last; k += 1) {
      const along = (places[k] as Place).slope["~si"] - from.slope["~si"];
      distances.push(start.plus(length.times(along / ground["~si"])));
    }
    const placed = {
      name: reach.name ?? reach.pipe.name,
      pipe: reach.pipe,
      first,
      last,
      length,
      fittings: (reach.fittings ?? [])
        .map((fitting) => fittingOf(fitting, find))
        .toSorted((a, b) => (a.station ?? -1) - (b.station ?? -1)),
    };
    first = last;
    return placed;
  });
  return { reaches: laid, distances, problems };
}

function fittingOf(
  { name, coefficient, count = 1, at }: FittingInput,
  find: (chainage: Quantity<"length">) => number,
): ProfileFitting {
  return {
    name: name ?? `K = ${coefficient.toString()}`,
    coefficient: coefficient.times(count),
    station: at && find(at),
  };
}

function stationOf(
  places: readonly Place[],
  distances: readonly Quantity<"pipe length">[],
  distance: Quantity<"pipe length">,
  i: number,
): ProfileStation {
  const { name, row, chainage, elevation } = places[i] as Place;
  const next = places[i + 1];
  const fall = next && elevation["~si"] - next.elevation["~si"];
  const run = (distances[i + 1]?.["~si"] ?? 0) - distance["~si"];
  return {
    name,
    row,
    chainage,
    distance,
    elevation,
    downSlope: fall === undefined ? undefined : radian.of(slopeOf(fall, run)),
  };
}

/** Angle of a slope; a plumb pipe is as long as it falls, a rounding error aside. */
function slopeOf(fall: number, run: number): number {
  return Math.atan2(fall, Math.sqrt(Math.max(0, run * run - fall * fall)));
}

function stretchesOf(
  { stretches = [] }: ProfileInput,
  places: readonly Place[],
  distances: readonly Quantity<"pipe length">[],
): ProfileStretch[] {
  const at = (chainage: Quantity<"length">): Quantity<"pipe length"> =>
    distances[
      places.findIndex((place) => samePlace(place.chainage, chainage))
    ] as Quantity<"pipe length">;
  return stretches.map(({ from, to, laid, warmest, coldest }) => ({
    laid,
    from: at(from),
    to: at(to),
    warmest,
    coldest,
  }));
}

/** A hump that is lower than the bore leaves water over its whole length and holds no pocket across it. */
function narrowestBore({ reaches }: ProfileInput, options: CallOptions): Quantity<"length"> {
  const [bore] = reaches
    .map(({ pipe }) => boreOf(pipe))
    .toSorted((a, b) => a["~si"] - b["~si"]) as [Quantity<"length">];
  options.onAssumed?.({
    formula: what,
    input: "turnDepth",
    value: bore.toString(),
    because: commonPractice.at("a hump counts from the height of the bore on", "practice"),
  });
  return bore;
}
