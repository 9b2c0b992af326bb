import {
  type CallOptions,
  commonPractice,
  firstPrinciples,
  NonPhysicalError,
  type Notice,
} from "@leat/formula";
import {
  coverage95,
  cubicMetrePerSecond,
  metrePerSecond,
  minute,
  one,
  percent,
  type Quantity,
  squareMetre,
} from "@leat/quantity";

import { fault, refusal } from "../refusal.ts";
import { usbrWaterMeasurementManual } from "../sources.ts";
import { belowSurfaceVelocity } from "./below-surface.ts";
import {
  leastVerticals,
  uncertaintyOfExposure,
  uncertaintyOfMeter,
  uncertaintyOfPoints,
  uncertaintyOfVerticals,
  verticalsByWidth,
  verticalsUncertainty,
} from "./iso-748.ts";
import { midSectionDischarge } from "./mid-section.ts";
import { sixTenthsVelocity } from "./six-tenths.ts";
import { iso748, usgsStreamflow } from "./sources.ts";
import { threePointVelocity } from "./three-point.ts";
import { twoPointVelocity } from "./two-point.ts";

const id = "velocity-area";

/** Where the meter was held in a vertical, and what it read: at parts of the depth below the surface. */
export type PointVelocities =
  /** One reading at six tenths. */
  | { readonly atSixTenths: Quantity<"velocity"> }
  /** Two readings. */
  | {
      readonly atTwoTenths: Quantity<"velocity">;
      readonly atEightTenths: Quantity<"velocity">;
    }
  /** Three readings. */
  | {
      readonly atTwoTenths: Quantity<"velocity">;
      readonly atSixTenths: Quantity<"velocity">;
      readonly atEightTenths: Quantity<"velocity">;
    }
  /** The surface alone. */
  | { readonly atSurface: Quantity<"velocity"> };

/** One vertical of a gauging. */
export interface GaugedVertical {
  /** Distance along the tape. */
  readonly distance: Quantity<"length">;
  /** Depth of the water. */
  readonly depth: Quantity<"length">;
  /** What was read; absent only where there is no depth, on a stone or a bar. */
  readonly velocity?: PointVelocities | undefined;
}

/** An edge of the water. */
export interface GaugedEdge {
  /** Distance along the tape. */
  readonly distance: Quantity<"length">;
  /** Depth at an upright bank; absent or 0 at one that slopes in. */
  readonly depth?: Quantity<"length"> | undefined;
  /** Velocity at an upright bank over that of the nearest vertical; 0.65 is taken where it is left out. */
  readonly share?: Quantity<"coefficient"> | undefined;
}

/** A gauging by wading rod and meter. */
export interface VelocityAreaInput {
  /** Names this gauging: its sources of uncertainty are called after it. */
  readonly name: string;
  /** The two edges of the water, the one where the tape's reading is less first. */
  readonly edges: readonly [GaugedEdge, GaugedEdge];
  /** What was measured between them, along the tape. */
  readonly verticals: readonly GaugedVertical[];
  /** Mean velocity of a vertical over that at its surface, where only the surface was read; 0.85 ± 0.1 where absent. */
  readonly surfaceCoefficient?: Quantity<"coefficient"> | undefined;
  /** How long the meter was held at each point; half a minute where absent. */
  readonly exposure?: Quantity<"time"> | undefined;
  /**
   * Whether a rotating meter has a rating of its own or that of its make; that of its make where absent. For another sort
   * of meter give each reading its ± instead.
   */
  readonly rating?: "individual" | "group" | undefined;
  /** Names meter, rod and tape; gaugings that share them share the error of their calibration. `name` where absent. */
  readonly instruments?: string | undefined;
}

/** The part of a gauging that one vertical or edge stands for. */
export interface GaugedSection {
  /** Distance along the tape. */
  readonly distance: Quantity<"length">;
  /** Depth. */
  readonly depth: Quantity<"length">;
  /** Mean velocity of the vertical. */
  readonly velocity: Quantity<"velocity">;
  /** Flow of the part. */
  readonly flow: Quantity<"volume flow">;
  /** Flow of the part over the whole. */
  readonly share: Quantity<"ratio">;
}

/** What a gauging says. */
export interface VelocityAreaResult {
  /** Discharge, with a source of uncertainty for each of the standard's components. */
  readonly flow: Quantity<"volume flow">;
  /** Area of the cross-section. */
  readonly area: Quantity<"area">;
  /** Flow over area. */
  readonly meanVelocity: Quantity<"velocity">;
  /** Width of the water. */
  readonly width: Quantity<"length">;
  /** Every part: the first edge, the verticals, the last edge. */
  readonly sections: readonly GaugedSection[];
}

/** Velocity at an upright, smooth wall over that of the vertical beside it. */
const atWall = 0.65;

/** Standard uncertainty of a width, relative. */
const ofWidth = 0.005;

/** Standard uncertainty of a depth, relative, above and below 0.3 m. */
const ofDepth = (depth: number): number => (depth > 0.3 ? 0.005 : 0.015);

/** Standard uncertainty of what meter, rod and tape have in common, relative. */
const ofInstruments = 0.01;

/**
 * Discharge from depths and velocities across a stream (velocity-area method, mid-section), with the uncertainty of the
 * standard.
 *
 *     Q = Σ(v·d·(b₊ − b₋)/2)
 *     u²(Q) = u_m² + u_s² + Σ((b·d·v)²·(u_b² + u_d² + u_p² + (u_c² + u_e²)/n)) / (Σ(b·d·v))²
 *
 * `midSectionDischarge` gives the flow, and the formulas for one, two and three points and for the surface the mean
 * velocity of each vertical. The uncertainty stands in the flow's named sources: number of verticals (u_m),
 * instruments (u_s), widths (u_b), depths (u_d), points in the vertical (u_p), readings of the meter (u_c), exposure
 * (u_e). A distance, a depth or a velocity that brings its own ± keeps it, and the standard's figure for widths, depths
 * or readings of the meter is left out there; the coefficient of the surface is one for all verticals and does not
 * average out.
 *
 * The standard asks that no vertical carry more than 10 % of the flow, the Geological Survey aims at 5 %: a caution for
 * each above 10 %, a note for the others. A small creek seldom has room for so many; what that costs is in u_m.
 *
 * Depth and width figures are those that instruments quoting the standard use (0.5 %, and 1.5 % in less than 0.3 m);
 * its tables print 0.15 % for width. Among stones both are too small: give the depths their own ±.
 *
 * @param input - The gauging.
 * @param options - Who is told.
 * @returns Flow, area, mean velocity, and the share of each vertical.
 * @throws NonPhysicalError a depth below zero, a distance that is not beyond the one before, a velocity missing, no
 * vertical, no water or no flow; each with its row, all rows at once.
 * @example
 * ```ts
 * import { velocityArea } from "@leat/flow-measurement";
 * import { format, litrePerSecond, metre, metrePerSecond } from "@leat/quantity";
 *
 * const row = (b: number, d: number, v: number) => ({
 *   distance: metre.of(b),
 *   depth: metre.of(d),
 *   velocity: { atSixTenths: metrePerSecond.of(v) },
 * });
 * const { flow } = velocityArea({
 *   name: "ford, 3 May",
 *   edges: [{ distance: metre.of(0) }, { distance: metre.of(3) }],
 *   verticals: [
 *     row(0.5, 0.22, 0.18),
 *     row(1, 0.41, 0.42),
 *     row(1.5, 0.52, 0.55),
 *     row(2, 0.47, 0.49),
 *     row(2.5, 0.25, 0.21),
 *   ],
 * });
 * format(flow, litrePerSecond, { plusMinus: true }); // => "390 ± 68 L/s (k = 1.96)"
 * ```
 * @see ISO 748; U.S. Bureau of Reclamation, Water Measurement Manual, ch. 10; USGS Water-Supply Paper 2175
 */
export function velocityArea(
  input: VelocityAreaInput,
  options: Pick<CallOptions, "onNotice"> = {},
): VelocityAreaResult {
  const tell = options.onNotice ?? (() => undefined);
  const { name, edges, verticals } = input;
  requireRows(input);

  const coefficient =
    input.surfaceCoefficient ??
    one.of(0.85).as("coefficient").plusMinus(one.of(0.1), `${name}: coefficient of the surface`);
  const means = verticals.map((vertical, i) => meanOf(vertical, i, coefficient, tell));
  if (!input.surfaceCoefficient && verticals.some(({ velocity }) => isSurface(velocity))) {
    tell(
      note(
        "surface-coefficient",
        ["surfaceCoefficient"],
        "no coefficient of the surface is given: 0.85 ± 0.1 is taken. Over boulders it may be lower still.",
        commonPractice.at("coefficient of the surface", "practice"),
      ),
    );
  }
  const rows = [
    edgeRow(edges[0], 0, means[0] as Quantity<"velocity">, name, tell),
    ...verticals.map(({ distance, depth }, i) => ({
      distance,
      depth,
      velocity: means[i] as Quantity<"velocity">,
    })),
    edgeRow(edges[1], 1, means.at(-1) as Quantity<"velocity">, name, tell),
  ];

  const { flow: plain, area } = midSectionDischarge({ verticals: rows });
  if (!(area["~si"] > 0))
    throw refusal([fault(id, ["verticals"], "verticals hold no water: every depth is 0.")]);
  const Q = plain["~si"];
  if (!(Q > 0)) {
    throw refusal([
      fault(
        id,
        ["verticals"],
        `the flow comes out as ${plain.toString()}. Count velocities downstream as positive.`,
        { actual: plain.toString() },
      ),
    ]);
  }

  const widths = rows.map(({ distance }, i) => {
    const before = rows[Math.max(i - 1, 0)]?.distance ?? distance;
    const after = rows[Math.min(i + 1, rows.length - 1)]?.distance ?? distance;
    return (after["~si"] - before["~si"]) / 2;
  });
  const flow = withComponents(input, rows, widths, plain, tell);
  const sections = rows.map(({ distance, depth, velocity }, i) => {
    const q = depth["~si"] * velocity["~si"] * (widths[i] as number);
    return { distance, depth, velocity, flow: cubicMetrePerSecond.of(q), share: one.of(q / Q) };
  });
  tellVelocities(means, tell);
  tellShares(sections, tell);
  tellCount(
    verticals.length,
    (rows.at(-1)?.distance["~si"] as number) - (rows[0]?.distance["~si"] as number),
    tell,
  );
  return {
    flow,
    area: areaWithComponents(input, rows, widths, area),
    meanVelocity: flow.dividedBy(area),
    width: edges[1].distance.minus(edges[0].distance),
    sections,
  };
}

interface Row {
  readonly distance: Quantity<"length">;
  readonly depth: Quantity<"length">;
  readonly velocity: Quantity<"velocity">;
}

/** Refuses what cannot be, every row of it at once. */
function requireRows({ edges, verticals }: VelocityAreaInput): void {
  const faults: Notice[] = [];
  if (verticals.length === 0) {
    faults.push(
      fault(id, ["verticals"], "verticals are missing: give one or more between the edges."),
    );
  }
  const all = [
    { path: ["edges", 0], row: edges[0] },
    ...verticals.map((row, i) => ({ path: ["verticals", i], row })),
    { path: ["edges", 1], row: edges[1] },
  ];
  all.forEach(({ path, row: { distance, depth } }, i) => {
    const where = path.join(".");
    if (depth && !(depth["~si"] >= 0)) {
      faults.push(
        fault(
          id,
          [...path, "depth"],
          `${where}.depth = ${depth.toString()} is below zero, which no depth can be. Check the row.`,
          { actual: depth.toString() },
        ),
      );
    }
    const before = all[i - 1]?.row.distance;
    if (before && !(distance["~si"] > before["~si"])) {
      faults.push(
        fault(
          id,
          [...path, "distance"],
          `${where}.distance = ${distance.toString()} is not beyond ${before.toString()} of the row before. List the rows along the tape, each place once.`,
          { actual: distance.toString(), source: firstPrinciples.at("order along the tape") },
        ),
      );
    }
  });
  verticals.forEach(({ depth, velocity }, i) => {
    if (!velocity && depth["~si"] > 0) {
      faults.push(
        fault(
          id,
          ["verticals", i, "velocity"],
          `verticals.${i}.velocity is missing, in ${depth.toString()} of water. Measure it, or leave the row out.`,
        ),
      );
    }
  });
  if (faults.length > 0) throw new NonPhysicalError(faults);
}

function isSurface(velocity: PointVelocities | undefined): boolean {
  return velocity !== undefined && "atSurface" in velocity;
}

/** Mean velocity of one vertical; limits of its formula are told with the row. */
function meanOf(
  { depth, velocity }: GaugedVertical,
  i: number,
  surfaceCoefficient: Quantity<"coefficient">,
  tell: (notice: Notice) => void,
): Quantity<"velocity"> {
  if (!velocity) return metrePerSecond.of(0);
  const onNotice = (notice: Notice): void =>
    tell({
      ...notice,
      path: ["verticals", i, ...notice.path],
      message: `${id}: verticals.${i}: ${notice.message}`,
    });
  if ("atSurface" in velocity) {
    return belowSurfaceVelocity({ ...velocity, surfaceCoefficient }, { onNotice });
  }
  if (!("atTwoTenths" in velocity)) return sixTenthsVelocity({ ...velocity, depth }, { onNotice });
  return "atSixTenths" in velocity
    ? threePointVelocity({ ...velocity, depth }, { onNotice })
    : twoPointVelocity({ ...velocity, depth }, { onNotice });
}

/** An edge as a row; at an upright bank it has a depth and a share of the next velocity. */
function edgeRow(
  edge: GaugedEdge,
  i: number,
  next: Quantity<"velocity">,
  name: string,
  tell: (notice: Notice) => void,
): Row {
  const { distance } = edge;
  const depth = edge.depth ?? distance.minus(distance);
  if (depth["~si"] === 0) return { distance, depth, velocity: next.times(0) };
  if (!edge.share) {
    tell(
      note(
        "wall-velocity",
        ["edges", i, "share"],
        `edges.${i}.share is left out: ${atWall} ± 0.15 of the next velocity is taken at the upright bank.`,
        usgsStreamflow.at("velocity beside a vertical wall", "memory"),
      ),
    );
  }
  const share =
    edge.share ??
    one.of(atWall).as("coefficient").within(one.of(0.15), `${name}: velocity at upright banks`);
  return { distance, depth, velocity: next.times(share) };
}

/** The flow with the standard's components, each as one named source. */
function withComponents(
  input: VelocityAreaInput,
  rows: readonly Row[],
  widths: readonly number[],
  plain: Quantity<"volume flow">,
  tell: (notice: Notice) => void,
): Quantity<"volume flow"> {
  const { name, verticals } = input;
  const minutes = input.exposure?.in(minute) ?? 0.5;
  if (!(minutes > 0)) {
    throw refusal([
      fault(id, ["exposure"], `exposure = ${input.exposure?.toString()} is not above zero.`, {
        actual: input.exposure?.toString(),
      }),
    ]);
  }
  const rating = input.rating ?? "group";
  tellTaken(input, tell);

  const squares = { widths: 0, depths: 0, points: 0, readings: 0, exposure: 0 };
  rows.forEach(({ distance, depth, velocity }, i) => {
    const section = depth["~si"] * (widths[i] as number);
    const q = section * velocity["~si"];
    if (!distance["~sources"]) squares.widths += (q * ofWidth) ** 2;
    if (!depth["~sources"]) squares.depths += (q * ofDepth(depth["~si"])) ** 2;
    const read = verticals[i - 1]?.velocity;
    if (!read) return;
    const points = readingsOf(read);
    const n = points.length as 1 | 2 | 3;
    squares.points += (q * uncertaintyOfPoints(n)) ** 2;
    for (const { value, part } of points) {
      // (u_e² + u_c²)/n, u_e the mean of the squares where the points lie in both parts.
      const exposed = uncertaintyOfExposure(velocity["~si"], minutes, part);
      squares.exposure += (section * exposed) ** 2 / (n * n);
      if (!value["~sources"]) {
        const rated = uncertaintyOfMeter(velocity["~si"], rating);
        squares.readings += (section * rated) ** 2 / (n * n);
      }
    }
  });
  const parts: readonly [string, number][] = [
    [`${name}: number of verticals`, plain["~si"] * uncertaintyOfVerticals(verticals.length)],
    [
      `${input.instruments ?? name}: calibration of meter, rod and tape`,
      plain["~si"] * ofInstruments,
    ],
    [`${name}: widths`, Math.sqrt(squares.widths)],
    [`${name}: depths`, Math.sqrt(squares.depths)],
    [`${name}: points in the vertical`, Math.sqrt(squares.points)],
    [`${name}: readings of the meter`, Math.sqrt(squares.readings)],
    [`${name}: time of exposure`, Math.sqrt(squares.exposure)],
  ];
  return parts.reduce(
    (flow, [source, standard]) =>
      standard > 0 ? flow.plusMinus(cubicMetrePerSecond.of(coverage95 * standard), source) : flow,
    plain,
  );
}

/** The area with what widths and depths leave open. */
function areaWithComponents(
  { name }: VelocityAreaInput,
  rows: readonly Row[],
  widths: readonly number[],
  area: Quantity<"area">,
): Quantity<"area"> {
  let ofWidths = 0;
  let ofDepths = 0;
  rows.forEach(({ distance, depth }, i) => {
    const section = depth["~si"] * (widths[i] as number);
    if (!distance["~sources"]) ofWidths += (section * ofWidth) ** 2;
    if (!depth["~sources"]) ofDepths += (section * ofDepth(depth["~si"])) ** 2;
  });
  return (
    [
      [`${name}: widths`, Math.sqrt(ofWidths)],
      [`${name}: depths`, Math.sqrt(ofDepths)],
    ] as const
  ).reduce(
    (sum, [source, standard]) =>
      standard > 0 ? sum.plusMinus(squareMetre.of(coverage95 * standard), source) : sum,
    area,
  );
}

/** Readings of a vertical, each in its part of the depth. */
function readingsOf(
  velocity: PointVelocities,
): readonly { value: Quantity<"velocity">; part: "upper" | "lower" }[] {
  if ("atSurface" in velocity) return [{ value: velocity.atSurface, part: "upper" }];
  const six =
    "atSixTenths" in velocity ? [{ value: velocity.atSixTenths, part: "upper" as const }] : [];
  return "atTwoTenths" in velocity
    ? [
        { value: velocity.atTwoTenths, part: "upper" },
        ...six,
        { value: velocity.atEightTenths, part: "lower" },
      ]
    : six;
}

function tellTaken(input: VelocityAreaInput, tell: (notice: Notice) => void): void {
  if (!input.exposure) {
    tell(
      note(
        "exposure",
        ["exposure"],
        "exposure is left out: half a minute at each point is taken. Hold the meter longer in slow water.",
        iso748.at("annex E, uncertainty by the time of exposure", "memory"),
      ),
    );
  }
  if (!input.rating) {
    tell(
      note(
        "rating",
        ["rating"],
        "rating is left out: that of the meter's make is taken.",
        iso748.at("annex E, uncertainty of the current-meter rating", "memory"),
      ),
    );
  }
}

/** Water that runs upstream, and neighbours that differ by more than the manual asks for. */
function tellVelocities(
  means: readonly Quantity<"velocity">[],
  tell: (notice: Notice) => void,
): void {
  const speeds = means.map((mean) => mean["~si"]);
  const upstream = speeds.filter((speed) => speed < 0).length;
  if (upstream > 0) {
    tell(
      note(
        "upstream",
        ["verticals"],
        `${upstream} of ${speeds.length} verticals run upstream and are taken off. A section without eddies is better.`,
        firstPrinciples.at("direction of the flow"),
      ),
    );
  }
  const most = 0.2;
  const uneven = speeds.filter((speed, i) => {
    const before = speeds[i - 1];
    return before !== undefined && Math.abs(speed - before) > most * Math.min(speed, before);
  }).length;
  if (uneven > 0) {
    tell(
      note(
        "uneven-velocities",
        ["verticals"],
        `${uneven} of ${speeds.length - 1} neighbouring verticals differ by more than 20 % of the slower one. More verticals between them would tell why.`,
        usbrWaterMeasurementManual.at("ch. 10, sec. 15"),
      ),
    );
  }
}

/** A caution for each part above a tenth of the flow, one note for those above a twentieth. */
function tellShares(sections: readonly GaugedSection[], tell: (notice: Notice) => void): void {
  const most = 0.1;
  const aim = 0.05;
  const last = sections.length - 1;
  const above: number[] = [];
  sections.forEach(({ share, distance }, i) => {
    const part = share["~si"];
    const path = i === 0 ? ["edges", 0] : i === last ? ["edges", 1] : ["verticals", i - 1];
    if (part > most) {
      tell({
        code: `${id}/large-share`,
        severity: "caution",
        path,
        message: `${id}: ${path.join(".")}, at ${distance.toString()}, carries ${share.in(percent).toFixed(1)} % of the flow, more than the 10 % that ISO 748 allows one vertical. Put another beside it.`,
        actual: `${share.in(percent).toFixed(1)} %`,
        limit: "at most 10 %",
        source: iso748.at("no more than 10 % of the discharge in one segment", "memory"),
      });
    } else if (part > aim) above.push(i);
  });
  if (above.length > 0) {
    tell(
      note(
        "share-above-aim",
        ["verticals"],
        `${above.length} of ${sections.length - 2} verticals carry more than the 5 % that the Geological Survey aims at, none of these more than 10 %.`,
        usgsStreamflow.at("no more than 5 % of the discharge in one subsection"),
      ),
    );
  }
}

/** Fewer verticals than the width asks for, and fewer than the table of their uncertainty begins with. */
function tellCount(count: number, width: number, tell: (notice: Notice) => void): void {
  const { least, row } = leastVerticals(width);
  if (count < least) {
    tell({
      code: `${id}/few-verticals`,
      severity: "caution",
      path: ["verticals"],
      message: `${id}: ${count} verticals are fewer than the ${least} that ISO 748 asks for in water ${row} wide; their number alone leaves ${(100 * coverage95 * uncertaintyOfVerticals(count)).toFixed(0)} % open.`,
      actual: String(count),
      limit: `at least ${least}`,
      source: verticalsByWidth.definition.source,
    });
  }
  const { verticals: fewest } = verticalsUncertainty.row("5");
  if (count < fewest) {
    tell({
      code: `${id}/beyond-table`,
      severity: "caution",
      path: ["verticals"],
      message: `${id}: ${count} verticals are fewer than the ${fewest} at which the standard's table of uncertainty begins; it is drawn on as one over their number.`,
      actual: String(count),
      limit: `at least ${fewest}`,
      source: verticalsUncertainty.definition.source,
    });
  }
}

function note(
  code: string,
  path: readonly (string | number)[],
  message: string,
  source: Notice["source"],
): Notice {
  return { code: `${id}/${code}`, severity: "note", path, message: `${id}: ${message}`, source };
}
