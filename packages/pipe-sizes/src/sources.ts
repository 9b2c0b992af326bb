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

/** PE pipe that is sized by its inside. */
export const astmSidrPipe: Source = /* @__PURE__ */ source({
  id: "astm-d2239",
  by: "ASTM D2239",
  title: "Polyethylene (PE) plastic pipe (SIDR-PR) based on controlled inside diameter",
  edition: "",
});

/** Tolerances and walls of plastic pipe, in Germany. */
export const din8074: Source = /* @__PURE__ */ source({
  id: "din-8074",
  by: "DIN 8074",
  title: "Polyethylene (PE) pipes, dimensions",
  edition: "as printed in a table of walls and masses",
});

/** PVC pipe for water supply, metric. */
export const iso1452: Source = /* @__PURE__ */ source({
  id: "iso-1452-2",
  by: "ISO 1452-2",
  title:
    "Plastics piping systems for water supply, unplasticized poly(vinyl chloride) (PVC-U), pipes",
  edition: "2009",
});

/** Steel pipe. */
export const asmeB3610: Source = /* @__PURE__ */ source({
  id: "asme-b36-10",
  by: "ASME B36.10M",
  title: "Welded and seamless wrought steel pipe",
  edition: "as printed in two open tables",
});

/** Steel pipe for ordinary uses: strength, tolerance of the wall, test pressures. */
export const astmA53: Source = /* @__PURE__ */ source({
  id: "astm-a53",
  by: "ASTM A53",
  title: "Pipe, steel, black and hot-dipped, zinc-coated, welded and seamless",
  edition: "as printed by two suppliers",
});

/** AWWA's manual of steel pipe. */
export const awwaM11: Source = /* @__PURE__ */ source({
  id: "awwa-m11",
  by: "AWWA M11",
  title: "Steel Pipe, A Guide for Design and Installation",
  edition: "",
});

/** Piping of buildings: moduli and expansions of metals and plastics. */
export const asmeB319: Source = /* @__PURE__ */ source({
  id: "asme-b31-9",
  by: "ASME B31.9",
  title: "Building Services Piping",
  edition: "as printed in a second text",
});

/** Structural design of buried pipes, in Germany. */
export const atvA127: Source = /* @__PURE__ */ source({
  id: "atv-a-127",
  by: "ATV-DVWK-A 127",
  title: "Static calculation of drains and sewers",
  edition: "3rd ed., 2000",
});

/** Tables of surge pressures in plastic pipe, with the short-term moduli that they are worked out with. */
export const surgeTables: Source = /* @__PURE__ */ source({
  id: "plastic-surge-tables",
  by: "published surge tables",
  title: "short-term moduli of PE and PVC pipe",
  edition: "three tables",
});

/** Data sheets and lists of the masses of pipe. */
export const pipeMassLists: Source = /* @__PURE__ */ source({
  id: "pipe-mass-lists",
  by: "published lists of pipe masses",
  title: "densities that masses of PE, PVC and steel pipe are worked out with",
  edition: "five lists",
});

/** Tables of absolute roughness of steel. */
export const steelRoughnessTables: Source = /* @__PURE__ */ source({
  id: "steel-roughness-tables",
  by: "published roughness tables",
  title: "absolute roughness of steel pipe walls",
  edition: "Binder, Fluid Mechanics, 1973, and two later tables",
});

/** Tables of thermal expansion, and makers' sheets. */
export const expansionTables: Source = /* @__PURE__ */ source({
  id: "expansion-tables",
  by: "published tables of thermal expansion",
  title: "thermal expansion of PE, PVC and steel pipe",
  edition: "two tables and three makers' sheets",
});

/** Manuals of PVC piping. */
export const pvcManuals: Source = /* @__PURE__ */ source({
  id: "pvc-manuals",
  by: "makers' manuals of PVC piping",
  title: "modulus of elasticity by temperature",
  edition: "several",
});
