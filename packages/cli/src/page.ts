import {
  ampere,
  format,
  hour,
  ohm,
  type Quantity,
  revolutionPerMinute,
  volt,
  watt,
} from "@leat/quantity";
import type { Design } from "@leat/scheme";

import { assumption, line, noticeLines, type Show, shower, wrap } from "./print.ts";

/**
 * A scheme as a page for a terminal: stops first, then the watts, then why.
 *
 * @param design - The scheme.
 * @param file - Name of the survey file.
 * @param customary - Whether it is in feet, gallons and psi.
 * @returns The page.
 */
export function page(design: Design, file: string, customary: boolean): string {
  const show = shower(customary);
  const stops = design.notices.filter(({ severity }) => severity === "stop");
  const notes = design.notices.filter(({ severity }) => severity === "note");
  const cautions = design.notices.filter(({ severity }) => severity === "caution");
  const blocks = [
    [design.site, `from ${file}`],
    ...(stops.length > 0
      ? [
          [
            "STOP: do not build this as it is; the watts are withheld",
            ...stops.flatMap(noticeLines),
          ],
        ]
      : []),
    ...(design.headline ? [headline(design)] : []),
    stream(design, show),
    fall(design, show),
    jets(design, show),
    account(design),
    cable(design),
    divert(design),
    ...(design.narrow.length > 0 ? [narrow(design)] : []),
    [
      "TAKEN FOR YOU (nearly all of it can be given in the survey)",
      ...design.assumed.flatMap(assumption),
    ],
    ...(notes.length > 0 ? [["NOTES", ...notes.flatMap(noticeLines)]] : []),
    ["CAUTIONS (local codes and licensed practice come first)", ...cautions.flatMap(noticeLines)],
  ];
  return `${blocks.map((block) => block.join("\n")).join("\n\n")}\n`;
}

function headline({ headline: h, account: { waterToWire } }: Design): string[] {
  if (!h) return [];
  const how = h.method === "slopes" ? `95 %, k = ${h.k.toFixed(2)}` : "95 %, by drawing";
  return [
    `${rounded(h.watts, h.half)} W ± ${rounded(h.half, h.half)} W at the battery's terminals (${how})`,
    line("water to wire", `${(100 * waterToWire["~si"]).toFixed(1)} %`),
  ];
}

/** Rounds to two figures of the half width. */
function rounded(q: Quantity<"electric power">, half: Quantity<"electric power">): string {
  const size = half.in(watt) > 0 ? Math.floor(Math.log10(half.in(watt))) - 1 : 0;
  const step = 10 ** Math.max(size, 0);
  return String(Math.round(q.in(watt) / step) * step);
}

function stream({ stream: s }: Design, show: Show): string[] {
  return [
    "WATER",
    line(`flow (${s.by})`, show.flow(s.measured)),
    line("stays in the stream", show.flow(s.left)),
    line("may be taken", show.flow(s.usable)),
  ];
}

function fall({ fall: f, reaches }: Design, show: Show): string[] {
  return [
    "FALL AND PIPE",
    line(`gross head (${f.by})`, show.head(f.gross.as("length"))),
    ...reaches.flatMap((r, i) => [
      line(`reach ${i + 1}`, `${r.name}, ${r.length.toString()}`),
      line("  bore, velocity", `${show.bore(r.bore)}, ${show.velocity(r.velocity)}`),
      line("  friction", show.head(r.friction.as("length"))),
      line("  fittings", show.head(r.fittings.as("length"))),
      line(
        "  static pressure at its foot",
        `${show.pressure(r.staticPressure)}${r.rating ? `, rated ${show.pressure(r.rating)}` : ""}`,
      ),
    ]),
    line("net head", show.head(f.net.as("length"))),
    line(
      "gauge at the nozzles",
      `at rest ${show.pressure(f.staticPressure)}, running ${show.pressure(f.runningPressure)}`,
    ),
  ];
}

function jets({ jets: j, wheel }: Design, show: Show): string[] {
  const bores = new Map<string, number>();
  for (const bore of j.nozzles) bores.set(show.bore(bore), (bores.get(show.bore(bore)) ?? 0) + 1);
  return [
    "JETS",
    ...Array.from(bores, ([bore, count]) =>
      line(`${count} × nozzle${j.given ? "" : ", bored to pass the flow"}`, bore),
    ),
    line("flow through them", show.flow(j.flow)),
    line("speed of the jets", show.velocity(j.velocity)),
    ...(wheel.speed
      ? [line("wheel at its best speed", format(wheel.speed, revolutionPerMinute, 3))]
      : []),
  ];
}

function account({ account: a }: Design): string[] {
  const whole = a.gross.in(watt);
  const row = (name: string, watts: number): string =>
    `  ${name.padEnd(56)} ${watts.toFixed(0).padStart(8)} W ${((100 * watts) / whole).toFixed(1).padStart(6)} %`;
  return [
    "WHERE THE POWER GOES",
    row("water over the gross head", whole),
    ...a.losses.map(({ name, power }) => row(`− ${name}`, power.in(watt))),
    row("= at the battery's terminals", a.delivered.in(watt)),
  ];
}

function cable({ cable: c }: Design): string[] {
  return [
    "CABLE",
    line("conductor", c.conductor),
    line("loop resistance", format(c.loop, ohm, 3)),
    line("current", format(c.current, ampere, 3)),
    line(
      "volts at the machine, drop",
      `${format(c.machineVolts, volt, 3)}, ${format(c.drop, volt, 3)}`,
    ),
  ];
}

function divert({ divert: d }: Design): string[] {
  return [
    "DIVERSION",
    line(
      "must be able to go somewhere",
      `${format(d.power, watt, 3)} at ${format(d.volts, volt, 3)}`,
    ),
    line(
      `elements: ${d.elements} ×`,
      `${format(d.element, watt, 3)} each at those volts, ${format(d.total, watt, 3)} and ${format(d.current, ampere, 3)} together`,
    ),
    ...(d.heating ? [line("to heat the tank by 40 K", format(d.heating, hour, 2))] : []),
  ];
}

function narrow({ narrow: n, headline: h }: Design): string[] {
  const half = h?.half;
  return [
    "WHAT WOULD NARROW IT MOST",
    ...n.flatMap(({ what, how, half: then }) =>
      wrap(
        `${what}: ${half ? `± ${half.in(watt).toFixed(0)} W becomes ` : ""}± ${then.in(watt).toFixed(0)} W were it known exactly. To know it better: ${how}.`,
      ),
    ),
  ];
}
