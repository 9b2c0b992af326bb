import { jetsFlowFromGauge } from "@leat/nozzles";
import { metre, point } from "@leat/quantity";

import type { NozzlesSurvey } from "../survey.ts";
import type { Conditions } from "./conditions.ts";
import type { Taken, Taking } from "./measurement.ts";

/** Running nozzles, read as a meter. */
export function nozzlesFlow(
  taking: Taking,
  { gauge, gaugeAboveNozzles, open, bore, coefficient }: NozzlesSurvey,
  { density, gravity }: Conditions,
): Taken<"volume flow"> {
  const read = taking.reading(
    "nozzles.gauge",
    {
      what: "gauge before the nozzles",
      how: "read a gauge of a finer class, and check its zero",
      spreadKey: "fall.gauge",
    },
    gauge,
  );
  return {
    by: "nozzles as a meter",
    value: taking.call(jetsFlowFromGauge, {
      gauge: point("local atmosphere", read, "before the nozzles"),
      gaugeAboveJet: gaugeAboveNozzles ?? metre.of(0),
      jets: open.map((nozzleDiameter) => ({ nozzleDiameter })),
      pipeDiameter: bore,
      dischargeCoefficient:
        coefficient ?? taking.ledger.standard("jets.coefficient", "coefficient"),
      density,
      gravity,
    }),
  };
}
