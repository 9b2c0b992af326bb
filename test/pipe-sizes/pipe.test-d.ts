import {
  pePipeIPS,
  pePipeISO,
  pePipeSIDR,
  pipe,
  pipesOf,
  pvcPipeISO,
  pvcPipeSchedule,
  pvcPipeSDR,
  steelPipe,
} from "@leat/pipe-sizes";
import type { Quantity } from "@leat/quantity";
import { expectTypeOf, test } from "vitest";

test("a pipe that no series has does not compile", () => {
  expectTypeOf(pePipeIPS("4", 11).insideDiameter.average).toEqualTypeOf<Quantity<"length">>();
  // @ts-expect-error 7 in is no iron pipe size
  pePipeIPS("7", 11);
  // @ts-expect-error DR 12 is not made
  pePipeIPS("4", 12);
  // @ts-expect-error a size in inches is a string
  pePipeIPS(4, 11);
  // @ts-expect-error 100 mm is no size of metric PE
  pePipeISO(100, 11);
  // @ts-expect-error PE4710 is a grade of the inch series
  pePipeISO(110, 11, "PE4710");
  // @ts-expect-error schedule 120 is not held
  pvcPipeSchedule("4", 120);
  // @ts-expect-error DR 11 is not PVC
  pvcPipeSDR("4", 11);
  // @ts-expect-error PVC by schedule has no dimension ratio
  pipe({ series: "PVC schedule", size: "4", sdr: 26 });
  // @ts-expect-error SIDR 11 is not made
  pePipeSIDR("2", 11);
  // @ts-expect-error PE100 is a grade of the metric series
  pePipeSIDR("2", 15, "PE100");
  // @ts-expect-error PN 7 is not made
  pvcPipeISO(110, 7);
  // @ts-expect-error schedule 160 is not held
  steelPipe("4", 160);
  // @ts-expect-error a list needs its ratio
  pipesOf({ series: "PE IPS" });
});
