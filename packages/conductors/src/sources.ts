import { source, type Source } from "@leat/formula";

/** NFPA 70, National Electrical Code. */
export const nfpa70: Source = /* @__PURE__ */ source({
  id: "nfpa-70",
  by: "NFPA 70",
  title: "National Electrical Code",
  edition: "2011 to 2023",
});

/** IEC 60228, Conductors of insulated cables. */
export const iec60228: Source = /* @__PURE__ */ source({
  id: "iec-60228",
  by: "IEC 60228",
  title: "Conductors of insulated cables",
  edition: "2004",
});

/** ASTM B258, diameters of solid round wires in the American Wire Gauge. */
export const astmB258: Source = /* @__PURE__ */ source({
  id: "astm-b258",
  by: "ASTM B258",
  title: "Standard nominal diameters and cross-sectional areas of AWG sizes of solid round wires",
  edition: "",
});
