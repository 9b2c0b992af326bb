import { source, type Source } from "@leat/formula";

/** D. L. Tennant, the Montana method; its table was read in the report of 1975 that the paper of 1976 prints again. */
export const tennant: Source = /* @__PURE__ */ source({
  id: "tennant",
  by: "Tennant",
  title:
    "Instream Flow Regimens for Fish, Wildlife, Recreation and Related Environmental Resources",
  edition: "U.S. Fish and Wildlife Service, 1975; Fisheries 1(4), 1976, 6–10",
});

/** The regulator of England on what a hydropower licence says: a hands-off flow, a greatest flow, a share between. */
export const hydropowerAbstraction: Source = /* @__PURE__ */ source({
  id: "ea-hydropower-abstraction",
  by: "Environment Agency",
  title: "Hydroelectric power water abstraction levels",
  edition: "1 October 2024",
});
