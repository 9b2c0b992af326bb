import { source, type Source } from "@leat/formula";

/** Richardson and others, on the factor between conductivity and salt. */
export const saltFactorPaper: Source = /* @__PURE__ */ source({
  id: "confluence-salt-factor",
  by: "Richardson, Sentlinger, Moore and Zimmermann",
  title:
    "Quantifying the Relation Between Electrical Conductivity and Salt Concentration for Dilution Gauging Via Dry Salt Injection",
  edition: "Confluence 1(2), 2017",
});

/** R. D. Moore's four-part introduction to salt dilution gauging. */
export const streamlineSalt: Source = /* @__PURE__ */ source({
  id: "streamline-salt",
  by: "Moore",
  title: "Introduction to Salt Dilution Gauging for Streamflow Measurement",
  edition: "Streamline Watershed Management Bulletin 7(4) to 9(1), 2004 to 2005",
});

/** ISO 9555, tracer dilution methods for steady flow. */
export const iso9555: Source = /* @__PURE__ */ source({
  id: "iso-9555",
  by: "ISO 9555-1",
  title:
    "Measurement of liquid flow in open channels: tracer dilution methods for the measurement of steady flow",
  edition: "1994",
});

/** ISO 7888, electrical conductivity of water. */
export const iso7888: Source = /* @__PURE__ */ source({
  id: "iso-7888",
  by: "ISO 7888",
  title: "Water quality: determination of electrical conductivity",
  edition: "1985 (EN 27888)",
});

/** What makers of conductivity meters print of the change with temperature. */
export const conductivityManuals: Source = /* @__PURE__ */ source({
  id: "conductivity-manuals",
  by: "makers' manuals of conductivity meters",
  title: "linear temperature compensation",
  edition: "several, read as stored pages",
});

/** Handbook properties of sodium chloride and its solutions. */
export const saltHandbook: Source = /* @__PURE__ */ source({
  id: "salt-handbook",
  by: "Salt Institute",
  title: "Chemical and physical properties of salt",
  edition: "as stored, undated",
});

/** Limiting molar conductivities of ions in water. */
export const crcHandbook: Source = /* @__PURE__ */ source({
  id: "crc-handbook",
  by: "CRC Handbook",
  title: "Handbook of Chemistry and Physics, ionic conductivity at infinite dilution",
  edition: "97th ed.",
});

/** The U.S. criteria for chloride and aquatic life. */
export const epaChloride: Source = /* @__PURE__ */ source({
  id: "epa-chloride",
  by: "US EPA",
  title: "Ambient Water Quality Criteria for Chloride",
  edition: "EPA 440/5-88-001, 1988",
});

/** The Canadian guidelines for chloride and aquatic life. */
export const ccmeChloride: Source = /* @__PURE__ */ source({
  id: "ccme-chloride",
  by: "CCME",
  title: "Canadian Water Quality Guidelines for the Protection of Aquatic Life: Chloride",
  edition: "PN 1460, 2011",
});

/** Elder on mixing across a stream, and the length that it takes, as a later paper quotes them. */
export const transverseMixing: Source = /* @__PURE__ */ source({
  id: "transverse-mixing",
  by: "Elder",
  title: "The dispersion of marked fluid in turbulent shear flow",
  edition: "Journal of Fluid Mechanics 5, 1959",
});

/** H. B. Fischer and others, Mixing in Inland and Coastal Waters. */
export const fischerMixing: Source = /* @__PURE__ */ source({
  id: "fischer-mixing",
  by: "Fischer and others",
  title: "Mixing in Inland and Coastal Waters",
  edition: "1979",
});
