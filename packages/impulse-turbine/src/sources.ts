import { source, type Source } from "@leat/formula";

/** A paper on small impulse turbines that tabulates the guidelines of a micro-hydro manual. */
export const rotatingMachineryPaper: Source = /* @__PURE__ */ source({
  id: "ijrm-3030217",
  by: "International Journal of Rotating Machinery",
  title: "article 3030217, guidelines after Thake, The Micro-hydro Pelton Turbine Manual, 2000",
  edition: "2017",
});
