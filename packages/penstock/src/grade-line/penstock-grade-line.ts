import type { CallOptions, Notice } from "@leat/formula";
import { boreOf } from "@leat/pipe-sizes";
import { metre, type Point, pressureOfColumn, type Quantity } from "@leat/quantity";
import { kinematicViscosity, vapourPressure, waterDensity } from "@leat/water";

import type { Profile, ProfileStation } from "../profile/profile.ts";
import { fault, refuseIf } from "../refusal.ts";
import { gravityOr } from "../standard-gravity.ts";
import { airClearingVelocity } from "./air-clearing-velocity.ts";
import type { AirValve, GradeLine, GradeLineInput, GradePoint } from "./grade-line.ts";
import { gradeNotices } from "./grade-notices.ts";
import { lossOfReach, type PlacedLoss } from "./reach-losses.ts";
import { reachPressures } from "./reach-pressures.ts";

/**
 * The grade line of a pipe at a flow: heads and pressures from place to place, at rest and running, and what follows from them.
 *
 * The energy line begins at the water of the intake and comes down by friction along each reach and by a step at each fitting; the grade
 * line lies a velocity head below it, and the pressure is what stands between it and the pipe. Static pressure is what a shut nozzle
 * leaves; surge is not in it. Density and viscosity are those of water at the temperature. The air is taken to press alike on all of
 * the pipe: its own column takes 0.12 % off a gauge.
 *
 * Bore, roughness and fittings are taken with what they may be off by, as `spreadOfPipe` and `spreadOfFittings` have it, under
 * `reaches.0.bore` and so on; lengths and levels bring their own.
 *
 * Limits of the laws of friction never stop it: what is exceeded stands among the notices.
 *
 * @param input - Profile, flow, water, air.
 * @param options - Notices, which the result holds too, and what is assumed.
 * @returns Points, losses by reach, pressures by reach, heads, where air valves and drains go.
 * @throws NonPhysicalError a negative flow; QuantityError a water level over another datum.
 * @example
 * ```ts
 * import { penstockGradeLine, penstockProfile } from "@leat/penstock";
 * import { readPipe } from "@leat/pipe-sizes";
 * import { bar, celsius, format, litrePerSecond, metre, pascal, point } from "@leat/quantity";
 *
 * const at = (chainage: number, height: number) => ({
 *   chainage: metre.of(chainage),
 *   elevation: point("site datum", metre.of(height), "nozzle"),
 * });
 * const line = penstockGradeLine({
 *   profile: penstockProfile({
 *     stations: [at(0, 49), at(150, 30), at(320, 0)],
 *     measured: "along the slope",
 *     reaches: [{ pipe: readPipe("110 mm PE100 SDR 17") }],
 *   }),
 *   flow: litrePerSecond.of(12),
 *   water: point("site datum", metre.of(50), "nozzle"),
 *   temperature: celsius.at(8),
 *   atmosphere: point("vacuum", pascal.of(95000)),
 * });
 * format(line.netHead, metre, { plusMinus: true }); // => "41.75 ± 0.38 m (k = 1.96)"
 * line.pressures[0]?.atRest.in(bar).toFixed(2); // => "4.90"
 * line.notices; // => []
 * ```
 */
export function penstockGradeLine(input: GradeLineInput, options: CallOptions = {}): GradeLine {
  const { profile, flow, water, temperature, atmosphere } = input;
  if (!(flow["~si"] >= 0)) {
    refuseIf([
      fault("grade-line", ["flow"], `flow = ${flow.toString()} runs up the pipe. Check its sign.`),
    ]);
  }
  const gravity = gravityOr(input.gravity, "grade-line", options);
  const density = waterDensity({ temperature });
  const vapour = vapourPressure({ temperature });
  const told: Notice[] = [];
  const heads = { flow, kinematicViscosity: kinematicViscosity({ temperature }), gravity };
  const placed = profile.reaches.map((reach, i) =>
    lossOfReach(reach, i, heads, (notice) => told.push(notice), options),
  );
  const overVapour = atmosphere.overOrigin().minus(vapour);
  const points = pointsOf(profile, water, placed, (head) =>
    pressureOfColumn(head, density, gravity),
  ).map((point) => ({ ...point, overVapour: point.runningPressure.plus(overVapour) }));
  const end = profile.stations.at(-1) as ProfileStation;
  const lost = (points.at(-1) as GradePoint).lost;
  const grossHead = water.minus(end.elevation).as("gross head");
  const losses = placed.map(({ loss }) => loss);
  const drawn = {
    points,
    losses,
    pressures: reachPressures(profile, points, temperature),
    grossHead,
    lost,
    netHead: grossHead.minus(lost),
    airValves: airValvesOf(profile, placed, gravity),
    drains: [...new Set([...profile.lowPoints, profile.stations.length - 1])],
  };
  const notices = [...gradeNotices(input, drawn, density["~si"] * gravity["~si"], vapour), ...told];
  for (const notice of notices) options.onNotice?.(notice);
  return { ...drawn, notices };
}

/** Every place in every reach, and twice where a fitting stands. */
function pointsOf(
  { stations, reaches }: Profile,
  water: Point<"site datum">,
  placed: readonly PlacedLoss[],
  pressure: (head: Quantity<"length">) => Quantity<"pressure">,
): Omit<GradePoint, "overVapour">[] {
  const points: Omit<GradePoint, "overVapour">[] = [];
  let above = metre.of(0).as("head loss");
  reaches.forEach((reach, r) => {
    const { loss, velocityHead, spread, placed: fittings } = placed[r] as PlacedLoss;
    const along = loss.friction.plus(spread);
    const start = (stations[reach.first] as ProfileStation).distance["~si"];
    let steps = metre.of(0).as("head loss");
    const put = (station: number, lost: Quantity<"head loss">): void => {
      const { distance, elevation } = stations[station] as ProfileStation;
      const energy = water.minus(lost.as("length"));
      const grade = energy.minus(velocityHead);
      const staticHead = water.minus(elevation);
      const runningHead = grade.minus(elevation);
      points.push({
        station,
        reach: r,
        distance,
        lost,
        energy,
        grade,
        staticHead,
        runningHead,
        restPressure: pressure(staticHead),
        runningPressure: pressure(runningHead),
      });
    };
    for (let k = reach.first; k <= reach.last; k += 1) {
      const share = ((stations[k] as ProfileStation).distance["~si"] - start) / reach.length["~si"];
      const before = above.plus(along.times(share)).plus(steps);
      const step = fittings.get(k);
      // Before the entrance there is no pipe yet.
      if (!step || points.length > 0) put(k, before);
      if (!step) continue;
      put(k, before.plus(step));
      steps = steps.plus(step);
    }
    above = above.plus(loss.friction).plus(loss.fittings);
  });
  return points;
}

/** An air valve at each high point, and whether the flow keeps it free of air. */
function airValvesOf(
  { highPoints, stations, reaches }: Profile,
  placed: readonly PlacedLoss[],
  gravity: Quantity<"acceleration">,
): AirValve[] {
  return highPoints.map((station) => {
    // The reach behind the high point, whose slope the air would have to go down.
    const r = reaches.findIndex(({ first, last }) => station >= first && station < last);
    const reach = reaches[r] as Profile["reaches"][number];
    const slope = (stations[station] as ProfileStation).downSlope as Quantity<"angle">;
    const clearing = airClearingVelocity({
      insideDiameter: boreOf(reach.pipe),
      downSlope: slope,
      gravity,
    });
    const velocity = (placed[r] as PlacedLoss).loss.velocity;
    return { station, clearing, swept: velocity["~si"] >= clearing["~si"] };
  });
}
