import { source, type Source } from "@leat/formula";

/** USGS SIR 2008–5126: flow duration and low flows at ungauged sites; read on its page. */
export const sir20085126: Source = /* @__PURE__ */ source({
  id: "usgs-sir-2008-5126",
  by: "USGS",
  title: "Scientific Investigations Report 2008–5126",
  edition: "2008",
});

/** USGS SIR 2005–5017: exponents of the drainage-area ratio in the Red River of the North basin. */
export const sir20055017: Source = /* @__PURE__ */ source({
  id: "usgs-sir-2005-5017",
  by: "USGS",
  title:
    "Scientific Investigations Report 2005–5017, Evaluation of Drainage-Area Ratio Method Used to Estimate Streamflow for the Red River of the North Basin",
  edition: "2005",
});

/** USGS SIR 2006–5286: exponents of the drainage-area ratio at 712 gauges of Texas. */
export const sir20065286: Source = /* @__PURE__ */ source({
  id: "usgs-sir-2006-5286",
  by: "USGS",
  title:
    "Scientific Investigations Report 2006–5286, Statewide Analysis of the Drainage-Area Ratio Method for 34 Streamflow Percentile Ranges in Texas",
  edition: "2006",
});

/** USGS SIR 2010–5170: statistics at low-flow partial-record stations, by the mean of the ratios among others. */
export const sir20105170: Source = /* @__PURE__ */ source({
  id: "usgs-sir-2010-5170",
  by: "USGS",
  title:
    "Scientific Investigations Report 2010–5170, Estimation of Selected Streamflow Statistics for a Network of Low-Flow Partial-Record Stations",
  edition: "2010",
});

/** R. M. Hirsch, the paper that named MOVE.1. */
export const hirsch: Source = /* @__PURE__ */ source({
  id: "hirsch-1982",
  by: "Hirsch",
  title: "A Comparison of Four Streamflow Record Extension Techniques",
  edition: "Water Resources Research 18(4), 1982, 1081–1088",
});

/** Z. Zhang and C. Kroll, on how many measurements and how close a correlation a base-flow line wants. */
export const zhangKroll: Source = /* @__PURE__ */ source({
  id: "zhang-kroll",
  by: "Zhang and Kroll",
  title: "Closer Look at the Baseflow Correlation Method",
  edition: "Journal of Hydrologic Engineering, 2007",
});

/** W. G. Cochran, on when which ratio is the best. */
export const cochran: Source = /* @__PURE__ */ source({
  id: "cochran-sampling",
  by: "Cochran",
  title: "Sampling Techniques",
  edition: "3rd ed., 1977",
});

/** Particle Data Group, on the mean of measurements that agree less than they should. */
export const particleDataGroup: Source = /* @__PURE__ */ source({
  id: "pdg-introduction",
  by: "Particle Data Group",
  title: "Review of Particle Physics, Introduction",
  edition: "2020",
});

/** A trial on two open records: how well a year of monthly visits gives the mean of each month over many years. */
export const twelveVisitsTrial: Source = /* @__PURE__ */ source({
  id: "twelve-visits-trial",
  by: "a trial on open records",
  title:
    "one day drawn from each month of each full year, 40 times over, straight lines between, held against the means of all years: USGS 01491000 (31 years) and Water Survey of Canada 08MG026 (20 years)",
  edition: "",
});
