import { source, type Source } from "@leat/formula";

/** O. Kirschmer on the head lost at racks of bars. */
export const kirschmer: Source = /* @__PURE__ */ source({
  id: "kirschmer",
  by: "Kirschmer",
  title: "Untersuchungen über den Gefällsverlust an Rechen",
  edition: "Mitteilungen des Hydraulischen Instituts München 1, 1926",
});

/** Idelchik's handbook of local resistances. */
export const idelchikHandbook: Source = /* @__PURE__ */ source({
  id: "idelchik-handbook",
  by: "Idelchik",
  title: "Handbook of Hydraulic Resistance",
  edition: "3rd ed., 1994",
});

/** Blevins on grilles and perforated plates across a flow. */
export const blevinsGrilles: Source = /* @__PURE__ */ source({
  id: "blevins-grilles",
  by: "Blevins",
  title: "Applied Fluid Dynamics Handbook, screens, grilles and perforated plates",
  edition: "1984",
});

/** The US fisheries service on screens of pump intakes. */
export const nmfsPumpIntake: Source = /* @__PURE__ */ source({
  id: "nmfs-pump-intake",
  by: "US National Marine Fisheries Service",
  title: "Juvenile Fish Screen Criteria for Pump Intakes",
  edition: "addendum, 1996",
});

/** The US fisheries service on passage of salmon and trout. */
export const nmfsSalmonid: Source = /* @__PURE__ */ source({
  id: "nmfs-salmonid-passage",
  by: "US National Marine Fisheries Service",
  title: "Anadromous Salmonid Passage Facility Design",
  edition: "2008 and 2011",
});

/** California on fish screens. */
export const californiaScreens: Source = /* @__PURE__ */ source({
  id: "california-fish-screens",
  by: "California Department of Fish and Game",
  title: "Fish Screening Criteria",
  edition: "19 June 2000; 14 CCR div. 1, ch. 3, exhibit D",
});

/** T. L. Wahl on screens of tilted wires, of which the abstracts were read and not the equations. */
export const wahlScreens: Source = /* @__PURE__ */ source({
  id: "wahl-tilted-wire",
  by: "Wahl (USBR)",
  title:
    "Hydraulic Performance of Coanda-Effect Screens; New Testing of Coanda-effect Screen Capacities",
  edition: "J. Hydraul. Eng. 127(6), 2001; HydroVision, 2013",
});

/** J. L. Gordon on vortices at intakes. */
export const gordon: Source = /* @__PURE__ */ source({
  id: "gordon-vortices",
  by: "Gordon",
  title: "Vortices at Intakes",
  edition: "Water Power, April 1970, 137–138",
});

/** The pump makers' standard on intakes. */
export const hydraulicInstitute: Source = /* @__PURE__ */ source({
  id: "ansi-hi-9-8",
  by: "ANSI/HI 9.8",
  title: "Pump Intake Design",
  edition: "1998",
});

/** The water works' manual on air valves. */
export const awwaM51: Source = /* @__PURE__ */ source({
  id: "awwa-m51",
  by: "AWWA M51",
  title: "Air-Release, Air/Vacuum, and Combination Air Valves",
  edition: "2001",
});

/** R. I. Ferguson and M. Church on how fast a grain falls. */
export const fergusonAndChurch: Source = /* @__PURE__ */ source({
  id: "ferguson-church",
  by: "Ferguson and Church",
  title: "A simple universal equation for grain settling velocity",
  edition: "J. Sediment. Res. 74(6), 2004, 933–937",
});

/** T. R. Camp on basins and what scours them. */
export const camp: Source = /* @__PURE__ */ source({
  id: "camp-settling",
  by: "Camp",
  title: "Sedimentation and the design of settling tanks",
  edition: "Trans. ASCE 111, 1946",
});

/** A guide to the civil works of small schemes, with worked examples. */
export const civilWorksGuidelines: Source = /* @__PURE__ */ source({
  id: "civil-works-guidelines",
  by: "Practical Action",
  title: "Civil Works Guidelines for Micro-Hydropower in Nepal",
  edition: "reprint of 1999",
});

/** V. T. Chow, Open-Channel Hydraulics. */
export const chow: Source = /* @__PURE__ */ source({
  id: "chow-open-channel",
  by: "Chow",
  title: "Open-Channel Hydraulics",
  edition: "1959",
});

/** The handbook of the heating engineers, insulation of pipes. */
export const ashraeFundamentals: Source = /* @__PURE__ */ source({
  id: "ashrae-fundamentals",
  by: "ASHRAE",
  title: "Handbook—Fundamentals, insulation for mechanical systems",
  edition: "2009 and 2019",
});

/** The US Army and Air Force on pipes in cold ground. */
export const arcticUtilities: Source = /* @__PURE__ */ source({
  id: "tm-5-852-5",
  by: "US Army and Air Force",
  title: "Arctic and Subarctic Construction: Utilities, TM 5-852-5/AFR 88-19 vol. 5",
  edition: "1987",
});

/** Tables of the properties of water and ice. */
export const waterTables: Source = /* @__PURE__ */ source({
  id: "water-and-ice-tables",
  by: "tables of water and ice",
  title: "heat of fusion at 0 °C",
  edition: "any",
});
