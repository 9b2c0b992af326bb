import { type CallOptions, type Notice } from "@leat/formula";
import { metre, metrePerSecond, one, type Quantity } from "@leat/quantity";

import { laminarUpTo, turbulentFrom } from "../friction/friction-factor-of.ts";
import { reachHeadLoss } from "../loss/reach-head-loss.ts";
import { spreadOfFittings, spreadOfPipe } from "../loss/spread-of-pipe.ts";
import type { ProfileReach } from "../profile/profile.ts";
import type { ReachLoss } from "./grade-line.ts";

/** Head lost by each place of a reach, and what the whole reach loses. */
export interface PlacedLoss {
  /** What the whole reach loses. */
  readonly loss: ReachLoss;
  /** Velocity head. */
  readonly velocityHead: Quantity<"length">;
  /** Loss of the fittings that are spread along it. */
  readonly spread: Quantity<"head loss">;
  /** Loss of the fittings in one place, by place among the stations. */
  readonly placed: ReadonlyMap<number, Quantity<"head loss">>;
}

const nothing = (): Quantity<"head loss"> => metre.of(0).as("head loss");

/** What a reach loses at a flow, with what its bore, wall and fittings may be off by. */
export function lossOfReach(
  reach: ProfileReach,
  i: number,
  water: {
    readonly flow: Quantity<"volume flow">;
    readonly kinematicViscosity: Quantity<"kinematic viscosity">;
    readonly gravity: Quantity<"acceleration">;
  },
  tell: (notice: Notice) => void,
  options: CallOptions,
): PlacedLoss {
  const id = `reaches.${i}`;
  const { insideDiameter, roughness } = spreadOfPipe(reach.pipe, id);
  if (water.flow["~si"] === 0) {
    const still = {
      friction: nothing(),
      fittings: nothing(),
      velocity: metrePerSecond.of(0),
      reynolds: one.of(0),
      regime: "at rest",
    } as const;
    return { loss: still, velocityHead: metre.of(0), spread: nothing(), placed: new Map() };
  }
  const { friction, velocity, reynolds } = reachHeadLoss(
    { ...water, insideDiameter, roughness, length: reach.length },
    { onNotice: (notice) => tell({ ...notice, path: ["profile", "reaches", i, ...notice.path] }) },
  );
  const velocityHead = velocity.squared().dividedBy(water.gravity.times(2));
  let spread = nothing();
  let fittings = nothing();
  const placed = new Map<number, Quantity<"head loss">>();
  for (const { coefficient, station } of reach.fittings) {
    const head = velocityHead.times(spreadOfFittings(coefficient, id, options)).as("head loss");
    fittings = fittings.plus(head);
    if (station === undefined) spread = spread.plus(head);
    else placed.set(station, placed.get(station)?.plus(head) ?? head);
  }
  return {
    loss: { friction, fittings, velocity, reynolds, regime: regimeOf(reynolds["~si"]) },
    velocityHead,
    spread,
    placed,
  };
}

function regimeOf(reynolds: number): ReachLoss["regime"] {
  if (reynolds <= laminarUpTo) return "laminar";
  return reynolds < turbulentFrom ? "in transition" : "turbulent";
}
