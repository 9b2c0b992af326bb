import { jetsFlowFromGauge } from "@leat/nozzles";
import { metre, point, type Quantity } from "@leat/quantity";

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
  const assumed = (): Quantity<"coefficient"> => {
    const at = `${taking.key}.nozzles.coefficient`;
    const standard = taking.ledger.standard("jets.coefficient", "coefficient", at);
    taking.hints({
      [taking.ledger.sourceOf(at)]: [
        "discharge coefficient of the nozzles",
        "fill a vessel from one nozzle and time it",
      ],
    });
    return standard;
  };
  return {
    by: "nozzles as a meter",
    value: taking.call(jetsFlowFromGauge, {
      gauge: point("local atmosphere", read, "before the nozzles"),
      gaugeAboveJet: gaugeAboveNozzles ?? metre.of(0),
      jets: open.map((nozzleDiameter) => ({ nozzleDiameter })),
      pipeDiameter: bore,
      dischargeCoefficient: coefficient ?? assumed(),
      density,
      gravity,
    }),
  };
}
