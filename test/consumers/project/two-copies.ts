// Two installed copies of @leat/quantity in one program, as happens where two packages ask for different versions. What one
// makes the other reads, adds and refuses; `second/` has a node_modules of its own.
import { expectSame } from "./expect-same.ts";
import * as first from "./first.ts";
import * as second from "./second/copy.ts";

const { metre } = first;
const { foot } = second;

expectSame(first.Quantity === second.Quantity, false, "the copies are one and the same");

for (const [one, other] of [
  [first, second],
  [second, first],
] as const) {
  // JSON that one copy wrote, read by the other.
  const written: unknown = JSON.parse(JSON.stringify(one.metre.of(3)));
  expectSame(other.fromJSON(written, "length").in(other.metre), 3, "JSON across copies");

  // Plain data of one copy without the detour through text.
  expectSame(other.fromJSON(one.metre.of(3).toJSON(), "length").in(one.metre), 3, "plain data");

  // Arithmetic, and a unit of the other copy.
  const sum = one.metre.of(3).plus(other.foot.of(1));
  expectSame(sum.in(one.metre), 3.3048, "3 m + 1 ft across copies");
  expectSame(sum.in(other.metre), 3.3048, "3 m + 1 ft in the other copy's unit");
  expectSame(
    one.metre.of(6).dividedBy(other.metre.of(3)).in(one.one),
    2,
    "6 m / 3 m across copies",
  );
  expectSame(one.isQuantity(other.metre.of(3)), true, "one copy knows the other's quantity");

  // Points of one origin subtract.
  const rise = one.celsius.at(20).minus(other.celsius.at(5));
  expectSame(rise.in(one.kelvin), 15, "20 °C − 5 °C across copies");

  // What does not fit is still refused.
  let code: unknown;
  try {
    (one.metre.of(3) as { plus(value: unknown): unknown }).plus(other.pascal.of(1));
  } catch (error) {
    code = error instanceof one.QuantityError ? error.code : error;
  }
  expectSame(code, "kind", "3 m + 1 Pa across copies");
}

// The types of the copies are one type.
export const mixed: first.Quantity<"length"> = foot.of(1).plus(metre.of(3));
