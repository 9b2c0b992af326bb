import { source, type Source } from "@leat/formula";

/** Textbooks of surveying on the closing error of a line of levels. */
export const levellingTexts: Source = /* @__PURE__ */ source({
  id: "levelling-texts",
  by: "textbooks of surveying",
  title: "permissible closing error of a line of levels, C·√K",
  edition: "as quoted by a question bank for engineers",
});

/** T. G. Hicks, Civil Engineering Formulas. */
export const hicksFormulas: Source = /* @__PURE__ */ source({
  id: "hicks-civil-formulas",
  by: "Hicks",
  title: "Civil Engineering Formulas",
  edition: "2002",
});

/** EN 837-1, Bourdon tube pressure gauges. */
export const en837: Source = /* @__PURE__ */ source({
  id: "en-837-1",
  by: "EN 837-1",
  title: "Pressure gauges: Bourdon tube pressure gauges, dimensions, metrology, requirements",
  edition: "1996",
});

/** ASME B40.100, Pressure gauges and gauge attachments. */
export const asmeB40: Source = /* @__PURE__ */ source({
  id: "asme-b40-100",
  by: "ASME B40.100",
  title: "Pressure Gauges and Gauge Attachments",
  edition: "2005",
});

/** ISO 2533, Standard atmosphere. */
export const iso2533: Source = /* @__PURE__ */ source({
  id: "iso-2533",
  by: "ISO 2533",
  title: "Standard Atmosphere",
  edition: "1975",
});

/** Technical manual of a surveying altimeter. */
export const altimeterManual: Source = /* @__PURE__ */ source({
  id: "tm-5-6675-203-15",
  by: "US Army",
  title: "TM 5-6675-203-15, Altimeter, Surveying",
  edition: "",
});

/** R. Jenne, moisture of the air. */
export const moistureOfAir: Source = /* @__PURE__ */ source({
  id: "ncar-moisture",
  by: "Jenne, NCAR",
  title: "Some Moisture Calculations",
  edition: "1980",
});

/** United States National Map Accuracy Standards. */
export const mapAccuracyStandards: Source = /* @__PURE__ */ source({
  id: "nmas",
  by: "US Bureau of the Budget",
  title: "United States National Map Accuracy Standards",
  edition: "1947",
});
