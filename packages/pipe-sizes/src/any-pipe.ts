import { metre } from "@leat/quantity";

import type { Pipe } from "./pipe.ts";
import { peIpsBetweenSizes } from "./series/pe-ips-between.ts";
import {
  type PeIpsMaterial,
  type PeIpsRatio,
  type PeIpsSize,
  pePipeIPS,
} from "./series/pe-ips-pipe.ts";
import { peIpsSizes } from "./series/pe-ips.ts";
import {
  type PeIsoMaterial,
  type PeIsoRatio,
  type PeIsoSize,
  pePipeISO,
} from "./series/pe-iso-pipe.ts";
import { peIsoThinSizes } from "./series/pe-iso-thin.ts";
import { peIsoSizes } from "./series/pe-iso.ts";
import { pePipeSIDR, type PeSidrRatio, type PeSidrSize } from "./series/pe-sidr-pipe.ts";
import { peSidrSizes } from "./series/pe-sidr.ts";
import {
  pvcIsoNominalPressure,
  type PvcIsoPressure,
  type PvcIsoSize,
  pvcPipeISO,
} from "./series/pvc-iso-pipe.ts";
import { pvcIsoSizes } from "./series/pvc-iso.ts";
import {
  pvcPipeSchedule,
  type PvcSchedule,
  type PvcScheduleSize,
} from "./series/pvc-schedule-pipe.ts";
import { pvcScheduleSizes } from "./series/pvc-schedule.ts";
import { pvcPipeSDR, type PvcSdrRatio, type PvcSdrSize } from "./series/pvc-sdr-pipe.ts";
import { pvcSdrSizes } from "./series/pvc-sdr.ts";
import {
  type SteelFinish,
  steelPipe,
  type SteelSchedule,
  type SteelSize,
} from "./series/steel-pipe.ts";
import { steelSizes } from "./series/steel.ts";

/** A series and what picks its walls. */
export type PipeClass =
  | { readonly series: "PE IPS"; readonly dr: PeIpsRatio; readonly material?: PeIpsMaterial }
  | { readonly series: "PE SIDR"; readonly sidr: PeSidrRatio; readonly material?: PeIpsMaterial }
  | { readonly series: "PE ISO"; readonly sdr: PeIsoRatio; readonly material?: PeIsoMaterial }
  | { readonly series: "PVC schedule"; readonly schedule: PvcSchedule }
  | { readonly series: "PVC SDR"; readonly sdr: PvcSdrRatio }
  | { readonly series: "PVC ISO"; readonly pressure: PvcIsoPressure }
  | { readonly series: "steel"; readonly schedule: SteelSchedule; readonly finish?: SteelFinish };

/** One pipe of a series. */
export type PipeChoice =
  | (Extract<PipeClass, { series: "PE IPS" }> & { readonly size: PeIpsSize })
  | (Extract<PipeClass, { series: "PE SIDR" }> & { readonly size: PeSidrSize })
  | (Extract<PipeClass, { series: "PE ISO" }> & { readonly size: PeIsoSize })
  | (Extract<PipeClass, { series: "PVC schedule" }> & { readonly size: PvcScheduleSize })
  | (Extract<PipeClass, { series: "PVC SDR" }> & { readonly size: PvcSdrSize })
  | (Extract<PipeClass, { series: "PVC ISO" }> & { readonly size: PvcIsoSize })
  | (Extract<PipeClass, { series: "steel" }> & { readonly size: SteelSize });

/**
 * A pipe of any series.
 *
 * @param choice - Series, size, and dimension ratio, schedule or nominal pressure.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pipe(choice: PipeChoice): Pipe {
  switch (choice.series) {
    case "PE IPS":
      return pePipeIPS(choice.size, choice.dr, choice.material);
    case "PE SIDR":
      return pePipeSIDR(choice.size, choice.sidr, choice.material);
    case "PE ISO":
      return pePipeISO(choice.size, choice.sdr, choice.material);
    case "PVC schedule":
      return pvcPipeSchedule(choice.size, choice.schedule);
    case "PVC SDR":
      return pvcPipeSDR(choice.size, choice.sdr);
    case "PVC ISO":
      return pvcPipeISO(choice.size, choice.pressure);
    case "steel":
      return steelPipe(choice.size, choice.schedule, choice.finish);
  }
}

/**
 * Every pipe of a series with one dimension ratio, schedule or nominal pressure, from the narrowest bore to the widest: to
 * choose from.
 *
 * @param of - Series, and dimension ratio, schedule or nominal pressure.
 * @returns The pipes that are made; those that the standard leaves out are not among them.
 */
export function pipesOf(of: PipeClass): Pipe[] {
  return choicesOf(of)
    .map(pipe)
    .toSorted((a, b) => a.insideDiameter.average.in(metre) - b.insideDiameter.average.in(metre));
}

function choicesOf(of: PipeClass): PipeChoice[] {
  switch (of.series) {
    case "PE IPS":
      return [peIpsSizes, peIpsBetweenSizes].flatMap((sizes) =>
        sizesWith(sizes, `DR ${of.dr}`).map((size) => ({ ...of, size })),
      );
    case "PE SIDR":
      return sizesWith(peSidrSizes, `SIDR ${of.sidr}`).map((size) => ({ ...of, size }));
    case "PE ISO":
      return [peIsoSizes, peIsoThinSizes].flatMap((sizes) =>
        sizesWith<PeIsoSize>(sizes, `SDR ${of.sdr}`).map((size) => ({ ...of, size })),
      );
    case "PVC schedule":
      return sizesWith(pvcScheduleSizes, `Sch ${of.schedule}`).map((size) => ({ ...of, size }));
    case "PVC SDR":
      return sizesWith(pvcSdrSizes, `SDR ${of.sdr}`).map((size) => ({ ...of, size }));
    case "PVC ISO":
      return pvcIsoNominalPressure.definition.rows.flatMap(({ sdr, upTo90, over90 }) =>
        sizesWith(pvcIsoSizes, `SDR ${sdr}`)
          .filter((size) => (size > 90 ? over90 : upTo90) === of.pressure)
          .map((size) => ({ ...of, size })),
      );
    case "steel":
      return sizesWith(steelSizes, of.schedule === "STD" ? "STD" : `Sch ${of.schedule}`).map(
        (size) => ({ ...of, size }),
      );
  }
}

/** Sizes whose wall the standard prints. */
function sizesWith<S extends string | number>(
  table: {
    keys(): S[];
    readonly definition: { readonly rows: readonly Readonly<Record<string, unknown>>[] };
  },
  column: string,
): S[] {
  const { rows } = table.definition;
  return table.keys().filter((_, i) => rows[i]?.[column] !== undefined);
}
