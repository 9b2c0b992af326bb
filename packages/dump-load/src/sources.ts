import { source, type Source } from "@leat/formula";

/** NFPA 70, National Electrical Code. */
export const nfpa70: Source = /* @__PURE__ */ source({
  id: "nfpa-70",
  by: "NFPA 70",
  title: "National Electrical Code",
  edition: "2011 to 2023",
});

/** Kell's density of air-free water at one atmosphere. */
export const kell: Source = /* @__PURE__ */ source({
  id: "kell-1975",
  by: "Kell",
  title: "J. Chem. Eng. Data 20(1), 97-105",
  edition: "1975",
});
