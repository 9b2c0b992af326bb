import { source, type Source } from "@leat/formula";

/** C. Cunnane, Unbiased plotting positions: a review, which weighs all four formulas. */
export const cunnaneReview: Source = /* @__PURE__ */ source({
  id: "cunnane-plotting",
  by: "Cunnane",
  title: "Unbiased plotting positions, a review, J. Hydrol. 37",
  edition: "1978",
});

/** E. M. Shaw, Hydrology in Practice. */
export const shawHydrology: Source = /* @__PURE__ */ source({
  id: "shaw-hydrology",
  by: "Shaw",
  title: "Hydrology in Practice",
  edition: "3rd ed., 1994",
});
