// Mistakes, one a line: test/quantity/compile-errors.test.ts says what the compiler answers to each, and what the
// same line answers where it runs unchecked. This folder is no part of the other programs.
import {
  ampere,
  celsius,
  currency,
  joule,
  litrePerSecond,
  metre,
  metrePerSecond,
  newtonMetre,
  pascal,
  point,
  type Quantity,
  squareMetre,
  toAbsolute,
  torque,
  volt,
} from "@leat/quantity";
import { Column } from "@leat/quantity/column";
import { fromJSON } from "@leat/quantity/text";

const head = metre.of(40).as("gross head");
const loss = metre.of(3).as("head loss");
const pipe = metre.of(120).as("pipe length");
const flow = litrePerSecond.of(12);
const warm = celsius.at(20);
const gauge = point("local atmosphere", pascal.of(3), "a");
const peg = point("site datum", metre.of(12), "peg");
const stage = point("staff zero", metre.of(1), "staff");
const flows = Column.of(litrePerSecond, [12, null]);
const power = (of: Quantity<"power">): string => String(of.minus(volt.of(1).times(ampere.of(1))));

/** Each by the name of what is mistaken for what. */
export const mistakes: Record<string, () => unknown> = {
  "flow for head": () => head.plus(flow),
  "pipe for loss": () => head.minus(pipe),
  "head for loss": () => loss.minus(head),
  "number for head": () => head.plus(3),
  "energy for torque": () => newtonMetre.of(3).plus(joule.of(3)),
  "head for pipe": () => pipe.lessThan(head),
  "flow out of head": () => head.in(litrePerSecond),
  "power out of head": () => head.as("power"),
  "volts for power": () => power(volt.of(120)),
  "volts per amp for power": () => power(volt.of(120).dividedBy(ampere.of(15.5))),
  "unnamed for power": () => power(metre.of(4).sqrt().dividedBy(flow)),
  "beyond the range": () => power(squareMetre.of(1).squared().squared()),
  "text for number": () => metre.of("3"),
  "pressure for force": () => torque(pascal.of(3), metre.of(1)),
  "flow for spread": () => head.plusMinus(flow, "level"),
  "price for amount": () => currency("USD").of(3).plus(currency("USD").per(metre).of(3)),
  "sum of temperatures": () => warm.plus(celsius.at(5)),
  "stage for elevation": () => peg.minus(stage),
  "length for temperature": () => warm.plus(metre.of(3)),
  "gauge for absolute": () => toAbsolute(gauge, gauge),
  "metres out of flows": () => flows.in(metre),
  "head out of flows": () => flows.as("gross head"),
  "text in a column": () => Column.of(metre, ["1"]),
  "net for gross": () => head.minus(fromJSON(head.toJSON(), "net head")).plus(flow),
  "speed for flow": () => flow.equals(metrePerSecond.of(1)),
};
