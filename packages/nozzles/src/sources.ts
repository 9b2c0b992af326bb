import { source, type Source } from "@leat/formula";

/** W. C. Unwin, Hydraulics, in a general encyclopaedia; out of copyright. */
export const unwinHydraulics: Source = /* @__PURE__ */ source({
  id: "unwin-hydraulics",
  by: "Unwin",
  title: "Hydraulics, in Encyclopaedia Britannica, vol. 14",
  edition: "11th ed., 1910",
});
