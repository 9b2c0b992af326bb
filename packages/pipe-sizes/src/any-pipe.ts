import { metre } from "@leat/quantity";

import type { Pipe } from "./pipe.ts";
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
import { peIsoSizes } from "./series/pe-iso.ts";
import {
  pvcPipeSchedule,
  type PvcSchedule,
  type PvcScheduleSize,
} from "./series/pvc-schedule-pipe.ts";
import { pvcScheduleSizes } from "./series/pvc-schedule.ts";
import { pvcPipeSDR, type PvcSdrRatio, type PvcSdrSize } from "./series/pvc-sdr-pipe.ts";
import { pvcSdrSizes } from "./series/pvc-sdr.ts";

/** A series and what picks its walls. */
export type PipeClass =
  | { readonly series: "PE IPS"; readonly dr: PeIpsRatio; readonly material?: PeIpsMaterial }
  | { readonly series: "PE ISO"; readonly sdr: PeIsoRatio; readonly material?: PeIsoMaterial }
  | { readonly series: "PVC schedule"; readonly schedule: PvcSchedule }
  | { readonly series: "PVC SDR"; readonly sdr: PvcSdrRatio };

/** One pipe of a series. */
export type PipeChoice =
  | (Extract<PipeClass, { series: "PE IPS" }> & { readonly size: PeIpsSize })
  | (Extract<PipeClass, { series: "PE ISO" }> & { readonly size: PeIsoSize })
  | (Extract<PipeClass, { series: "PVC schedule" }> & { readonly size: PvcScheduleSize })
  | (Extract<PipeClass, { series: "PVC SDR" }> & { readonly size: PvcSdrSize });

/**
 * A pipe of any series.
 *
 * @param choice - Series, size, and dimension ratio or schedule.
 * @returns The pipe.
 * @throws QuantityError `size` where no such pipe is made; the message lists those that are.
 */
export function pipe(choice: PipeChoice): Pipe {
  switch (choice.series) {
    case "PE IPS":
      return pePipeIPS(choice.size, choice.dr, choice.material);
    case "PE ISO":
      return pePipeISO(choice.size, choice.sdr, choice.material);
    case "PVC schedule":
      return pvcPipeSchedule(choice.size, choice.schedule);
    case "PVC SDR":
      return pvcPipeSDR(choice.size, choice.sdr);
  }
}

/**
 * Every pipe of a series with one dimension ratio or schedule, from the narrowest bore to the widest: to choose from.
 *
 * @param of - Series, and dimension ratio or schedule.
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
      return sizesWith(peIpsSizes, `DR ${of.dr}`).map((size) => ({ ...of, size }));
    case "PE ISO":
      return sizesWith(peIsoSizes, `SDR ${of.sdr}`).map((size) => ({ ...of, size }));
    case "PVC schedule":
      return sizesWith(pvcScheduleSizes, `Sch ${of.schedule}`).map((size) => ({ ...of, size }));
    case "PVC SDR":
      return sizesWith(pvcSdrSizes, `SDR ${of.sdr}`).map((size) => ({ ...of, size }));
  }
}

/** Sizes whose wall the standard prints. */
function sizesWith<S extends string | number>(
  table: { keys(): S[]; row(size: S): Readonly<Record<string, string | number | undefined>> },
  column: string,
): S[] {
  return table.keys().filter((size) => table.row(size)[column] !== undefined);
}
