import { commonPractice, firstPrinciples, type Notice } from "@leat/formula";
import { type AnyQuantity, metre, type Quantity } from "@leat/quantity";

import type { Profile } from "../profile/profile.ts";
import { siphonNotes, wisnerAir } from "../sources.ts";
import type { GradeLine, GradeLineInput, GradePoint } from "./grade-line.ts";

const what = "grade-line";

/** Head of absolute pressure below which dissolved air comes out of the water and gathers. */
const airComesOut = 2.7;

/** A grade line before anything is said of it. */
export type Drawn = Omit<GradeLine, "notices">;

/** What is to be said of a grade line, the gravest first. */
export function gradeNotices(
  input: GradeLineInput,
  drawn: Drawn,
  specificWeight: number,
  vapour: Quantity<"pressure">,
): Notice[] {
  const say = sayIn(input.profile);
  const all = [
    ...mouthAndEnd(input, drawn, say),
    ...overWater(input, drawn, say),
    ...sucking(drawn, say, specificWeight, vapour),
    ...airThatGathers(drawn, say),
    ...ratings(input.profile, drawn),
  ];
  const weight = { stop: 0, caution: 1, note: 2 };
  return all.toSorted((a, b) => weight[a.severity] - weight[b.severity]);
}

/** Places and heights in the words and units of the survey. */
interface Say {
  place(station: number): string;
  head(metres: number): string;
}

function sayIn({ stations }: Profile): Say {
  const inUnit = (like: AnyQuantity | undefined, si: number): string => {
    const unit = like?.["~unit"] ?? metre;
    return `${Number(unit.fromSI(si).toPrecision(3))} ${unit.symbol}`;
  };
  const [first] = stations;
  const length = stations.find(({ row }) => row === 1)?.chainage;
  return {
    place(station) {
      const here = stations[station];
      const along = inUnit(length, here?.distance["~si"] ?? 0);
      return here?.name ? `${here.name} (${along} along the pipe)` : `${along} along the pipe`;
    },
    head: (metres) => inUnit(first?.elevation.overOrigin(), metres),
  };
}

function notice(
  code: string,
  severity: Notice["severity"],
  path: Notice["path"],
  message: string,
  facts: Partial<Notice> = {},
): Notice {
  return { code: `${what}/${code}`, severity, path, message: `${what}: ${message}`, ...facts };
}

/** A mouth that is dry, an end that nothing comes out of. */
function mouthAndEnd({ flow }: GradeLineInput, drawn: Drawn, say: Say): Notice[] {
  const [mouth] = drawn.points as readonly [GradePoint];
  const told: Notice[] = [];
  if (!(mouth.staticHead["~si"] > 0)) {
    told.push(
      notice(
        "mouth-dry",
        "stop",
        ["water"],
        `the mouth of the pipe lies ${say.head(-mouth.staticHead["~si"])} above the water at the intake, which does not reach it. Check the two levels and their datum.`,
        { source: firstPrinciples.at("water does not rise of itself") },
      ),
    );
  }
  if (flow["~si"] > 0 && !(drawn.netHead["~si"] > 0)) {
    told.push(
      notice(
        "head-used-up",
        "stop",
        ["flow"],
        `the pipe would lose ${say.head(drawn.lost["~si"])} at ${flow.toString()}, and there are ${say.head(drawn.grossHead["~si"])}: this flow does not pass. Take a wider pipe or less water.`,
        {
          actual: say.head(drawn.lost["~si"]),
          limit: `below ${say.head(drawn.grossHead["~si"])}`,
          source: firstPrinciples.at("net head is gross head less losses"),
        },
      ),
    );
  }
  return told;
}

/** The worst place of those where something is below 0. */
function worst(
  points: readonly GradePoint[],
  of: (point: GradePoint) => number,
): GradePoint | undefined {
  let found: GradePoint | undefined;
  for (const point of points) if (of(point) < (found ? of(found) : 0)) found = point;
  return found;
}

/** A pipe that goes over the water at its intake: it does not fill of itself. */
function overWater({ primed = false }: GradeLineInput, { points }: Drawn, say: Say): Notice[] {
  const [, ...behind] = points;
  const top = worst(behind, ({ staticHead }) => staticHead["~si"]);
  if (!top) return [];
  const height = say.head(-top.staticHead["~si"]);
  return [
    primed
      ? notice(
          "siphon",
          "caution",
          ["profile", "stations", top.station],
          `${say.place(top.station)} lies ${height} above the water at the intake: the pipe is a siphon there. It runs while it holds no air; count on priming it again.`,
          { actual: height, source: firstPrinciples.at("a siphon") },
        )
      : notice(
          "above-water",
          "stop",
          ["profile", "stations", top.station],
          `${say.place(top.station)} lies ${height} above the water at the intake: the pipe does not fill of itself. Lay it lower, or say that it is primed.`,
          {
            actual: height,
            limit: "below the water",
            source: firstPrinciples.at("water does not rise of itself"),
          },
        ),
  ];
}

/** Places where the running pipe sucks: told once, by the gravest that happens. */
function sucking(
  { points }: Drawn,
  say: Say,
  specificWeight: number,
  vapour: Quantity<"pressure">,
): Notice[] {
  const low = worst(points, ({ runningPressure }) => runningPressure["~si"]);
  if (!low) return [];
  const under = say.head(-low.runningHead["~si"]);
  const path = ["profile", "stations", low.station];
  const where = say.place(low.station);
  if (!(low.overVapour["~si"] > 0)) {
    return [
      notice(
        "column-parts",
        "stop",
        path,
        `at ${where} the grade line runs ${under} below the pipe: the water boils there and its column parts. Lay the pipe lower, or take a wider pipe above it or less water.`,
        {
          actual: `${under} below the pipe`,
          source: firstPrinciples.at("vapour pressure of water"),
        },
      ),
    ];
  }
  const absolute = (low.overVapour["~si"] + vapour["~si"]) / specificWeight;
  if (absolute < airComesOut) {
    return [
      notice(
        "air-comes-out",
        "caution",
        path,
        `at ${where} the grade line runs ${under} below the pipe, which leaves ${say.head(absolute)} of absolute pressure: below ${say.head(airComesOut)} air comes out of the water and stops a siphon. Thin pipe may be sucked flat. Lay the pipe lower or lose less above it.`,
        {
          actual: say.head(absolute),
          limit: `at least ${say.head(airComesOut)}`,
          source: siphonNotes.at("7.6 m below the atmosphere is what is reached in practice"),
        },
      ),
    ];
  }
  return [
    notice(
      "below-atmosphere",
      "caution",
      path,
      `at ${where} the grade line runs ${under} below the pipe: it sucks there. Joints draw in air, thin pipe may be sucked flat, and an air valve would let air in while it runs. Lay the pipe lower, or lose less above it.`,
      {
        actual: `${under} below the pipe`,
        source: firstPrinciples.at("pressure below that of the air"),
      },
    ),
  ];
}

/** High points that the flow does not sweep clear of air. */
function airThatGathers({ airValves, losses, points }: Drawn, say: Say): Notice[] {
  return airValves
    .filter(({ swept }) => !swept)
    .map(({ station, clearing }) => {
      const reach = points.find((point) => point.station === station)?.reach ?? 0;
      const velocity = losses[reach]?.velocity["~si"] ?? 0;
      const metres = (si: number): string => `${si.toFixed(2)} m/s`;
      return notice(
        "air-gathers",
        "caution",
        ["profile", "stations", station],
        `air gathers at the high point ${say.place(station)}: the water goes at ${metres(velocity)} and would have to go at ${metres(clearing["~si"])} to carry it on. Put an air valve there, or grade the hump away.`,
        {
          actual: metres(velocity),
          limit: `at least ${metres(clearing["~si"])}`,
          source: wisnerAir.at("clearing velocity", "secondary"),
        },
      );
    });
}

/** Pipe that does not hold, or of which nobody says whether it does. */
function ratings({ reaches }: Profile, { pressures }: Drawn): Notice[] {
  return reaches.flatMap(({ name, pipe }, i): Notice[] => {
    const held = pressures[i];
    if (!held) return [];
    const path = ["profile", "reaches", i, "pipe"];
    const { atRest, rating, temperature } = held;
    const unit = pipe.pressureRating?.["~unit"] ?? atRest["~unit"];
    const pressure = (si: number): string =>
      unit
        ? `${Number(unit.fromSI(si).toPrecision(3))} ${unit.symbol}`
        : `${Math.round(si / 1000)} kPa`;
    if (!rating) {
      return [
        notice(
          "rating-unknown",
          "caution",
          path,
          `nothing says what ${name} carries at ${temperature.toString()}; at rest it holds ${pressure(atRest["~si"])}. Ask its maker.`,
          {
            actual: pressure(atRest["~si"]),
            source: commonPractice.at("a maker states what a pipe carries", "practice"),
          },
        ),
      ];
    }
    if (atRest["~si"] <= rating["~si"]) return [];
    return [
      notice(
        "over-rating",
        "stop",
        path,
        `${name} carries ${pressure(rating["~si"])} at ${temperature.toString()} and holds ${pressure(atRest["~si"])} at rest, before any surge. Take a stronger class from where it is too weak.`,
        {
          actual: pressure(atRest["~si"]),
          limit: `at most ${pressure(rating["~si"])}`,
          ...(pipe.source && { source: pipe.source }),
        },
      ),
    ];
  });
}
