import { commonPractice, input, type ScalarInput } from "@leat/formula";
import { one } from "@leat/quantity";

/** Share of the openings that leaves cover; none where it is left out. */
export function blockedShareInput(): ScalarInput<"ratio", "b", true> {
  return input("ratio", "b", {
    domain: "fraction",
    default: one.of(0),
    because: commonPractice.at("a clean screen", "practice"),
  });
}
