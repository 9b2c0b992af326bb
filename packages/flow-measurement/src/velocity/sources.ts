import { source, type Source } from "@leat/formula";

/** ISO 748, Hydrometry: measurement of liquid flow in open channels using current-meters or floats. */
export const iso748: Source = /* @__PURE__ */ source({
  id: "iso-748",
  by: "ISO 748",
  title: "Measurement of liquid flow in open channels using current-meters or floats",
  edition: "2007",
});

/** S. E. Rantz and others, Measurement and Computation of Streamflow. */
export const usgsStreamflow: Source = /* @__PURE__ */ source({
  id: "usgs-wsp-2175",
  by: "USGS",
  title: "Measurement and Computation of Streamflow, Water-Supply Paper 2175",
  edition: "1982",
});

/** U.S. Environmental Protection Agency, Volunteer Stream Monitoring: A Methods Manual. */
export const epaStreamMonitoring: Source = /* @__PURE__ */ source({
  id: "epa-stream-monitoring",
  by: "EPA",
  title: "Volunteer Stream Monitoring: A Methods Manual, EPA 841-B-97-003",
  edition: "1997",
});
