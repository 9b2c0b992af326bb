// A program of somebody who installed the published packages: it imports what needs no reader of files, and
// computes.
import * as cli from "@leat/cli";
import * as conductors from "@leat/conductors";
import * as dcTransmission from "@leat/dc-transmission";
import * as dumpLoad from "@leat/dump-load";
import * as flowMeasurement from "@leat/flow-measurement";
import * as formula from "@leat/formula";
import * as reference from "@leat/formula/reference";
import * as hydrology from "@leat/hydrology";
import * as impulseTurbine from "@leat/impulse-turbine";
import * as intake from "@leat/intake";
import * as nozzles from "@leat/nozzles";
import * as numerics from "@leat/numerics";
import * as penstock from "@leat/penstock";
import * as pipeSizes from "@leat/pipe-sizes";
import * as quantity from "@leat/quantity";
import * as column from "@leat/quantity/column";
import * as text from "@leat/quantity/text";
import * as scheme from "@leat/scheme";
import * as water from "@leat/water";

import { expectSame } from "./expect-same.ts";

const entries: Record<string, object> = {
  cli,
  conductors,
  dcTransmission,
  dumpLoad,
  flowMeasurement,
  formula,
  reference,
  hydrology,
  impulseTurbine,
  intake,
  nozzles,
  numerics,
  penstock,
  pipeSizes,
  quantity,
  column,
  text,
  scheme,
  water,
};

for (const [name, exports] of Object.entries(entries)) {
  expectSame(Object.keys(exports).length > 0, true, `${name} exports something`);
}

// A foot is 0.3048 m by definition.
const { foot, metre } = quantity;
expectSame(metre.of(3).plus(foot.of(1)).in(metre), 3.3048, "3 m + 1 ft");
const lengthAndPressure = (): unknown =>
  // @ts-expect-error the published types refuse what the sources' types refuse
  metre.of(3).plus(quantity.pascal.of(1));
expectSame(refusal(lengthAndPressure), "kind", "3 m + 1 Pa");

const { vNotchDischarge } = flowMeasurement;
const { degree, litrePerSecond, millimetre } = quantity;
const discharge: quantity.Quantity<"volume flow"> = vNotchDischarge({
  head: millimetre.of(200),
  angle: degree.of(90),
  crestHeight: metre.of(0.6),
  approachWidth: metre.of(2),
});
expectSame(discharge.in(litrePerSecond) > 0, true, "a weir runs");

function refusal(compute: () => unknown): unknown {
  try {
    return compute();
  } catch (error) {
    return error instanceof quantity.QuantityError ? error.code : error;
  }
}
