import { source, type Source } from "@leat/formula";

/** Colebrook's paper on the friction of commercial pipes. */
export const colebrookPaper: Source = /* @__PURE__ */ source({
  id: "colebrook",
  by: "Colebrook",
  title:
    "Turbulent flow in pipes, with particular reference to the transition region between the smooth and rough pipe laws",
  edition: "Journal of the Institution of Civil Engineers 11, 1939",
});

/** Moody's paper, with the chart of friction factors. */
export const moodyPaper: Source = /* @__PURE__ */ source({
  id: "moody",
  by: "Moody",
  title: "Friction factors for pipe flow",
  edition: "Transactions of the ASME 66, 1944",
});

/** Swamee and Jain's paper with the explicit friction factor. */
export const swameeJainPaper: Source = /* @__PURE__ */ source({
  id: "swamee-jain",
  by: "Swamee and Jain",
  title: "Explicit equations for pipe-flow problems",
  edition: "Journal of the Hydraulics Division ASCE 102, 1976",
});

/** The user manual of the public-domain network solver of the US EPA. */
export const epanetManual: Source = /* @__PURE__ */ source({
  id: "epanet-manual",
  by: "US EPA",
  title: "EPANET 2.2 User Manual",
  edition: "EPA/600/R-20/133, 2020",
});

/** Tables of absolute roughness, as printed in general references on pipe flow. */
export const roughnessTables: Source = /* @__PURE__ */ source({
  id: "roughness-tables",
  by: "published roughness tables",
  title: "absolute roughness of pipe walls",
  edition: "Binder, Fluid Mechanics, 1973, and three later tables",
});

/** Crane's technical paper on the flow through valves, fittings and pipe. */
export const craneTp410: Source = /* @__PURE__ */ source({
  id: "crane-tp-410",
  by: "Crane TP-410",
  title: "Flow of Fluids Through Valves, Fittings, and Pipe",
  edition: "2009",
});

/** Rennels and Hudson's guide to pipe flow. */
export const rennelsHudson: Source = /* @__PURE__ */ source({
  id: "rennels-hudson",
  by: "Rennels and Hudson",
  title: "Pipe Flow: A Practical and Comprehensive Guide",
  edition: "1st ed., 2012",
});

/** Idelchik's handbook of local resistances. */
export const idelchikHandbook: Source = /* @__PURE__ */ source({
  id: "idelchik-handbook",
  by: "Idelchik",
  title: "Handbook of Hydraulic Resistance",
  edition: "3rd ed., 1994",
});

/** Swamee and Sharma on the design of pipe networks. */
export const swameeSharma: Source = /* @__PURE__ */ source({
  id: "swamee-sharma",
  by: "Swamee and Sharma",
  title: "Design of Water Supply Pipe Networks",
  edition: "2008",
});

/** A table of entrances, as an online textbook and a handbook of pumping stations print it. */
export const entranceTables: Source = /* @__PURE__ */ source({
  id: "entrance-tables",
  by: "published tables of minor losses",
  title: "entrances of pipes",
  edition: "a textbook's table and one of the type of Sanks, Pumping Station Design, app. B",
});

/** The chemical engineers' handbook, its table of losses in fittings and valves. */
export const perryFittings: Source = /* @__PURE__ */ source({
  id: "perry-fittings",
  by: "Perry's Chemical Engineers' Handbook",
  title: "additional frictional loss for turbulent flow through fittings and valves",
  edition: "as printed in a second text",
});

/** Limits of the equation of Hazen and Williams. */
export const liouHazenWilliams: Source = /* @__PURE__ */ source({
  id: "liou-hazen-williams",
  by: "Liou",
  title: "Limitations and proper use of the Hazen–Williams equation",
  edition: "Journal of Hydraulic Engineering 124(9), 1998",
});

/** Removal of air from water lines by the flow. */
export const wisnerAir: Source = /* @__PURE__ */ source({
  id: "wisner-air",
  by: "Wisner, Mohsen and Kouwen",
  title: "Removal of air from water lines by hydraulic means",
  edition: "Journal of the Hydraulics Division ASCE 101, 1975",
});

/** A textbook of fluid mechanics, its problem of the nozzle of greatest power. */
export const munsonFluids: Source = /* @__PURE__ */ source({
  id: "munson-fluid-mechanics",
  by: "Munson, Young, Okiishi and Huebsch",
  title: "Fundamentals of Fluid Mechanics",
  edition: "8th ed.",
});

/** Course notes on flow through a siphon. */
export const siphonNotes: Source = /* @__PURE__ */ source({
  id: "siphon-notes",
  by: "notes of a hydraulics laboratory",
  title: "flow through a siphon",
  edition: "virtual laboratory of an Indian institute of technology",
});
