import {
  headFor,
  inputFor,
  likelySlip,
  ratingTable,
  rehbockDischarge,
  villemonteFactor,
  vNotchDischarge,
  weirFlow,
} from "@leat/flow-measurement";
import { degree, inch, litrePerSecond, metre, type Quantity } from "@leat/quantity";
import { expectTypeOf, test } from "vitest";

const weir = { notchWidth: metre.of(1), crestHeight: metre.of(0.4) };
const place = { head: metre.of(0.1), crestHeight: metre.of(0.5), approachWidth: metre.of(2) };
const flow = litrePerSecond.of(5);
const ruler = { unit: inch, division: inch.of(1), from: inch.of(1), to: inch.of(9) };

test("what is sought has the kind of its input", () => {
  expectTypeOf(headFor(rehbockDischarge, weir, flow).value).toEqualTypeOf<Quantity<"length">>();
  expectTypeOf(inputFor(vNotchDischarge, "angle", place, flow).value).toEqualTypeOf<
    Quantity<"angle">
  >();
});

test("what is sought is not given, and nothing else is left out", () => {
  // @ts-expect-error The head is what is sought.
  headFor(rehbockDischarge, { ...weir, head: metre.of(1) }, flow);
  // @ts-expect-error The height of the crest is missing.
  headFor(rehbockDischarge, { notchWidth: metre.of(1) }, flow);
  // @ts-expect-error The head is missing where the angle is sought.
  inputFor(vNotchDischarge, "angle", weir, flow);
  // @ts-expect-error A weir across the channel has no angle.
  inputFor(rehbockDischarge, "angle", weir, flow);
});

test("only a formula of a flow will do, and only its inputs of their kind", () => {
  // @ts-expect-error A factor is no flow.
  headFor(villemonteFactor, { tailwaterHead: metre.of(0.1), shape: "V-notch" }, flow);
  // @ts-expect-error A flow is wanted, not a length.
  headFor(rehbockDischarge, weir, metre.of(1));
  // @ts-expect-error An angle is no width.
  ratingTable(rehbockDischarge, { ...weir, notchWidth: degree.of(90) }, ruler);
  // @ts-expect-error The head is missing.
  weirFlow(rehbockDischarge, weir);
  // @ts-expect-error A head is a length.
  likelySlip(rehbockDischarge, weir, degree.of(5));
});
