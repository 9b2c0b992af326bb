// What the editor knows. Nothing here runs: vitest checks the types, and each mistake must be one.
import {
  ampere,
  celsius,
  currency,
  cubicMetrePerSecond,
  foot,
  joule,
  kelvin,
  litrePerSecond,
  metre,
  metrePerSecond,
  newton,
  newtonMetre,
  pascal,
  type Point,
  point,
  type Quantity,
  revolutionPerMinute,
  rimSpeed,
  second,
  squareMetre,
  toAbsolute,
  torque,
  type Unit,
  volt,
  watt,
} from "@leat/quantity";
import { Column, TimeAxis } from "@leat/quantity/column";
import { fromJSON, pointFromJSON } from "@leat/quantity/text";
import { describe, expectTypeOf, it } from "vitest";

const head = metre.of(40).as("gross head");
const loss = metre.of(3).as("head loss");
const net = metre.of(37).as("net head");
const pipe = metre.of(120).as("pipe length");

describe("names", () => {
  it("of products and quotients", () => {
    expectTypeOf(volt.of(120).times(ampere.of(15.5))).toEqualTypeOf<Quantity<"power">>();
    expectTypeOf(newtonMetre.of(3).times(revolutionPerMinute.of(600))).toEqualTypeOf<
      Quantity<"power">
    >();
    expectTypeOf(metre.of(3).dividedBy(second.of(2))).toEqualTypeOf<Quantity<"velocity">>();
    expectTypeOf(metre.of(3).dividedBy(metre.of(2))).toEqualTypeOf<Quantity<"ratio">>();
    expectTypeOf(newton.of(3).dividedBy(squareMetre.of(2))).toEqualTypeOf<Quantity<"pressure">>();
    expectTypeOf(squareMetre.of(2).times(metrePerSecond.of(3))).toEqualTypeOf<
      Quantity<"volume flow">
    >();
    expectTypeOf(volt.of(120).dividedBy(ampere.of(15.5))).toEqualTypeOf<Quantity<"resistance">>();
    expectTypeOf(revolutionPerMinute.of(600).times(metre.of(1))).toEqualTypeOf<
      Quantity<"m·s^-1·rad">
    >();
    expectTypeOf(torque(newton.of(3), metre.of(2))).toEqualTypeOf<Quantity<"torque">>();
    expectTypeOf(rimSpeed(revolutionPerMinute.of(600), metre.of(1))).toEqualTypeOf<
      Quantity<"velocity">
    >();
  });

  it("of roots, squares and what has no name", () => {
    expectTypeOf(squareMetre.of(4).sqrt()).toEqualTypeOf<Quantity<"length">>();
    expectTypeOf(metre.of(4).sqrt().dividedBy(second.of(1))).toEqualTypeOf<
      Quantity<"m^0.5·s^-1">
    >();
    expectTypeOf(metre.of(4).sqrt().squared()).toEqualTypeOf<Quantity<"length">>();
    expectTypeOf(metre.of(4).squared()).toEqualTypeOf<Quantity<"area">>();
    expectTypeOf(metre.of(4).squared().squared()).toEqualTypeOf<Quantity<"m^4">>();
  });

  it("of kinds", () => {
    expectTypeOf(head.minus(loss)).toEqualTypeOf<Quantity<"net head">>();
    expectTypeOf(head.minus(net)).toEqualTypeOf<Quantity<"head loss">>();
    expectTypeOf(net.plus(loss)).toEqualTypeOf<Quantity<"gross head">>();
    expectTypeOf(head.plus(head)).toEqualTypeOf<Quantity<"gross head">>();
    expectTypeOf(head.times(2)).toEqualTypeOf<Quantity<"gross head">>();
    expectTypeOf(head.times(pipe)).toEqualTypeOf<Quantity<"area">>();
    expectTypeOf(watt.of(3).as("shaft power").plus(watt.of(2).as("electric power"))).toEqualTypeOf<
      Quantity<"power">
    >();
    expectTypeOf(head.plusMinus(metre.of(1), "level")).toEqualTypeOf<Quantity<"gross head">>();
    expectTypeOf(head.in(foot)).toEqualTypeOf<number>();
  });

  it("of money", () => {
    const price = currency("USD").per(foot);
    expectTypeOf(price).toEqualTypeOf<Unit<"price per length">>();
    expectTypeOf(price.of(3.2).times(pipe)).toEqualTypeOf<Quantity<"money">>();
    expectTypeOf(currency("USD").of(3).dividedBy(joule.of(2))).toEqualTypeOf<
      Quantity<"price per energy">
    >();
  });

  it("of points, columns and JSON", () => {
    expectTypeOf(celsius.at(20)).toEqualTypeOf<Point<"absolute zero">>();
    expectTypeOf(celsius.at(20).minus(celsius.at(10))).toEqualTypeOf<
      Quantity<"temperature difference">
    >();
    expectTypeOf(celsius.at(20).plus(kelvin.of(3))).toEqualTypeOf<Point<"absolute zero">>();
    expectTypeOf(point("staff zero", metre.of(1), "a")).toEqualTypeOf<Point<"staff zero">>();
    expectTypeOf(Column.of(litrePerSecond, [1, null])).toEqualTypeOf<Column<"volume flow">>();
    expectTypeOf(Column.of(metre, [1]).as("gross head").at(0)).toEqualTypeOf<
      Quantity<"gross head"> | undefined
    >();
    expectTypeOf(fromJSON({}, "net head")).toEqualTypeOf<Quantity<"net head">>();
    expectTypeOf(pointFromJSON({}, "vacuum")).toEqualTypeOf<Point<"vacuum">>();
    expectTypeOf(Column.fromJSON({}, "net head")).toEqualTypeOf<Column<"net head">>();
  });
});

describe("mistakes", () => {
  it("in a sum", () => {
    // @ts-expect-error a flow is no head
    head.plus(litrePerSecond.of(12));
    // @ts-expect-error a pipe's length is no head, though both are lengths
    head.plus(pipe);
    // @ts-expect-error two losses are subtracted one after the other, but a loss has no gross head in it
    loss.minus(head);
    // @ts-expect-error a torque is no energy
    newtonMetre.of(3).plus(joule.of(3));
    // @ts-expect-error a number has no unit
    head.plus(3);
    const ratio = metre.of(1).dividedBy(metre.of(2));
    const efficiency = ratio.as("efficiency");
    // @ts-expect-error a coefficient and an efficiency are two numbers
    efficiency.plus(ratio.as("coefficient"));
    // @ts-expect-error an efficiency is not a plain ratio
    ratio.plus(efficiency);
  });

  it("in a comparison", () => {
    // @ts-expect-error a net head is compared with net heads
    net.lessThan(head);
    // @ts-expect-error a flow is compared with flows
    litrePerSecond.of(3).equals(metrePerSecond.of(3));
    const frequency = metre.of(1).dividedBy(metre.of(1)).dividedBy(second.of(1));
    // @ts-expect-error rpm is no frequency: the radian is missing
    revolutionPerMinute.of(3).greaterThan(frequency);
  });

  it("with operators", () => {
    // @ts-expect-error + does not know units
    const sum = head + head;
    // @ts-expect-error * does not know units
    const product = head * 2;
    return [sum, product];
  });

  it("in the way out", () => {
    // @ts-expect-error a head has no litres per second
    head.in(litrePerSecond);
    // @ts-expect-error a head is not a number by itself
    const n: number = head;
    // @ts-expect-error a plain length is not a head: as("net head") says so
    const h: Quantity<"net head"> = metre.of(3);
    // @ts-expect-error a head is not a plain length either, without as("length")
    const l: Quantity<"length"> = net;
    return [n, h, l];
  });

  it("in the door between kinds", () => {
    // @ts-expect-error a head is no power
    head.as("power");
    // @ts-expect-error there is no such kind
    head.as("nett head");
  });

  it("in exponents", () => {
    // @ts-expect-error a length to the eighth is beyond the range: it is no length
    const l: Quantity<"length"> = metre.of(1).squared().squared().squared();
    return l;
  });

  it("with money", () => {
    // @ts-expect-error a price is no amount
    currency("USD").of(3).plus(currency("USD").per(metre).of(3));
    // @ts-expect-error an amount has no unit without a currency
    currency();
  });

  it("with points", () => {
    // @ts-expect-error temperatures do not add
    celsius.at(20).plus(celsius.at(5));
    // @ts-expect-error a temperature has no double
    celsius.at(20).times(2);
    // @ts-expect-error an elevation and a stage are counted from two zeros
    point("site datum", metre.of(3), "peg").minus(point("staff zero", metre.of(1), "staff"));
    // @ts-expect-error a temperature moves by a difference of temperature
    celsius.at(20).plus(metre.of(3));
    // @ts-expect-error a gauge pressure is not absolute
    toAbsolute(point("local atmosphere", pascal.of(3)), point("local atmosphere", pascal.of(3)));
    // @ts-expect-error there is no such origin
    point("sea level", metre.of(3));
    // @ts-expect-error a temperature is no temperature difference
    const rise: Quantity<"temperature difference"> = celsius.at(20);
    return rise;
  });

  it("with columns", () => {
    const flows = Column.of(cubicMetrePerSecond, [1]);
    // @ts-expect-error a flow has no metres
    flows.in(metre);
    // @ts-expect-error columns enter formulas: they have no arithmetic
    flows.plus(flows);
    // @ts-expect-error text is read by read(), not by a column
    Column.of(metre, ["1"]);
    // @ts-expect-error a flow is no head
    flows.as("gross head");
    // @ts-expect-error a column of flows is not one of lengths
    const lengths: Column<"length"> = flows;
    // @ts-expect-error a clock without an offset is nobody's
    TimeAxis.irregular([], {});
    // @ts-expect-error a step is a time
    TimeAxis.regular({ start: "2024-02-28", step: metre.of(3), count: 1, utcOffset: "+10:00" });
    return lengths;
  });

  it("with doors", () => {
    // @ts-expect-error a pressure is no force
    torque(pascal.of(3), metre.of(1));
    // @ts-expect-error a speed is no speed of rotation
    rimSpeed(metrePerSecond.of(3), metre.of(1));
  });

  it("with units", () => {
    // @ts-expect-error text is no number
    metre.of("3");
    // @ts-expect-error a spread has the kind of what it spreads
    head.plusMinus(litrePerSecond.of(1), "level");
  });
});
