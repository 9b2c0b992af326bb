import { frictionHeadOf } from "@leat/penstock";

import { siteOf, streamOf, useBody, type Values, waterOf } from "./compute.ts";
import type { Parameter } from "./ledger.ts";
import type { planOf, Sizing } from "./plan.ts";

/** A look at the scheme before pipe and cable are chosen. */
export function firstLook(
  parameters: readonly Parameter[],
  partial: Parameters<Parameters<typeof planOf>[1]>[1],
): Sizing {
  const values: Values = Object.fromEntries(parameters.map(({ key, value }) => [key, value]));
  const site = siteOf(partial, useBody);
  const { density, viscosity } = waterOf(values, site, useBody);
  const { usable } = streamOf(partial, values);
  const head = values["fall.gross"] as number;
  const roughPower =
    density *
    site.gravity *
    usable *
    head *
    (values["wheel.efficiency"] as number) *
    (values["machine.efficiency"] as number);
  const volts = values["bank.charging"] as number;
  return {
    staticPressure: density * site.gravity * head,
    lossShare: (bore, height, length) =>
      frictionShare({ usable, viscosity, gravity: site.gravity, head }, bore, height, length),
    // I²·R over P, written so that no flow gives no loss.
    cableShare: (resistance) => (roughPower * resistance) / (volts * volts),
  };
}

function frictionShare(
  at: { usable: number; viscosity: number; gravity: number; head: number },
  bore: number,
  height: number,
  length: number,
): number {
  return frictionHeadOf(at.usable, bore, height, length, at.viscosity, at.gravity) / at.head;
}
