import { source, type Source } from "@leat/formula";

/** PE pipe in iron pipe sizes, by dimension ratio of the outside diameter. */
export const astmPePipe: Source = /* @__PURE__ */ source({
  id: "astm-d3035",
  by: "ASTM",
  title: "D3035, F714 and F2619, polyethylene pipe based on controlled outside diameter",
  edition: "as carried by two makers' sheets",
});

/** PVC pipe, schedules 40 and 80. */
export const astmPvcSchedule: Source = /* @__PURE__ */ source({
  id: "astm-d1785",
  by: "ASTM D1785",
  title: "Poly(vinyl chloride) plastic pipe, schedules 40, 80 and 120",
  edition: "as printed in two tables of PVC pipe data",
});

/** PVC pipe by standard dimension ratio. */
export const astmPvcSdr: Source = /* @__PURE__ */ source({
  id: "astm-d2241",
  by: "ASTM D2241",
  title: "Poly(vinyl chloride) pressure-rated pipe (SDR series)",
  edition: "",
});

/** PE pipe for water supply, metric. */
export const iso4427: Source = /* @__PURE__ */ source({
  id: "iso-4427",
  by: "ISO 4427",
  title: "Plastics piping systems for water supply, polyethylene",
  edition: "2007, as printed by two makers",
});

/** Tolerances of plastic pipes, metric. */
export const iso11922: Source = /* @__PURE__ */ source({
  id: "iso-11922-1",
  by: "ISO 11922-1",
  title:
    "Thermoplastics pipes for the conveyance of fluids, dimensions and tolerances, metric series",
  edition: "1997",
});

/** AWWA's manual of PE pipe. */
export const awwaM55: Source = /* @__PURE__ */ source({
  id: "awwa-m55",
  by: "AWWA M55",
  title: "PE Pipe, Design and Installation",
  edition: "1st ed., 2006",
});

/** The plastic pipe institute's handbook. */
export const ppiHandbook: Source = /* @__PURE__ */ source({
  id: "ppi-handbook",
  by: "PPI",
  title: "Handbook of Polyethylene Pipe",
  edition: "2nd ed.",
});

/** A machinist's handbook with tables of PVC pipe. */
export const machinerysHandbook: Source = /* @__PURE__ */ source({
  id: "machinerys-handbook",
  by: "Machinery's Handbook",
  title: "pipe and tubing of plastics",
  edition: "31st ed.",
});

/** Design stresses of PE, listed by the plastic pipe institute. */
export const ppiTr4: Source = /* @__PURE__ */ source({
  id: "ppi-tr4",
  by: "PPI TR-4",
  title: "Listing of hydrostatic design stresses",
  edition: "as quoted by a maker's bulletin",
});

/** Tables of absolute roughness, as printed in general references on pipe flow. */
export const plasticRoughnessTables: Source = /* @__PURE__ */ source({
  id: "plastic-roughness-tables",
  by: "published roughness tables",
  title: "absolute roughness of plastic pipe walls",
  edition: "four tables",
});
