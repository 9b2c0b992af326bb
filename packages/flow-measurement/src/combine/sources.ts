import { source, type Source } from "@leat/formula";

/** ASTM E178, Dealing with Outlying Observations. */
export const astmE178: Source = /* @__PURE__ */ source({
  id: "astm-e178",
  by: "ASTM E178",
  title: "Standard Practice for Dealing With Outlying Observations",
  edition: "",
});

/** JCGM 100, Guide to the expression of uncertainty in measurement. */
export const gum: Source = /* @__PURE__ */ source({
  id: "jcgm-100",
  by: "GUM",
  title: "JCGM 100, Guide to the expression of uncertainty in measurement",
  edition: "2008",
});

/** Particle Data Group, Review of Particle Physics. */
export const particleDataGroup: Source = /* @__PURE__ */ source({
  id: "pdg-review",
  by: "Particle Data Group",
  title: "Review of Particle Physics",
  edition: "2020",
});
