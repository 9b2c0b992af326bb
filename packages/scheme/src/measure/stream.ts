import { commonPractice } from "@leat/formula";
import type { Quantity } from "@leat/quantity";

import { bothFlows } from "../both.ts";
import type { Ledger } from "../ledger.ts";
import type { FieldSurvey, FlowSurvey } from "../survey.ts";
import { bucketFlow } from "./bucket.ts";
import type { Conditions } from "./conditions.ts";
import { floatsFlow } from "./floats.ts";
import { type Measured, measured } from "./measured.ts";
import { type Taken, Taking } from "./measurement.ts";
import { meterFlow } from "./meter.ts";
import { nozzlesFlow } from "./nozzles.ts";
import { saltFeedFlow, saltFlow } from "./salt.ts";
import { staffFlow } from "./staff.ts";
import { crestFlow, notchFlow } from "./weir.ts";

/**
 * The flow of the stream, by every measurement of it.
 *
 * @param survey - The survey.
 * @param ledger - Lists what is assumed.
 * @param conditions - Gravity and water of the site.
 * @returns Each measurement, those of a day combined, and the flow that a scheme is made for.
 */
export function measureStream(
  { stream }: FieldSurvey,
  ledger: Ledger,
  conditions: Conditions,
): Measured<"volume flow"> {
  const { customary } = conditions;
  const measurements = stream.measured.map((each, i) => {
    const way = wayOf(each);
    const taking = stream.listed
      ? new Taking({
          ledger,
          key: `stream.measured.${i + 1}`,
          path: ["stream", "measured", i],
          way,
          customary,
        })
      : new Taking({ ledger, key: "stream", path: ["stream"], way, customary });
    const { by, value } = taking.guarded(() => flowBy(taking, each, conditions));
    if (!(value["~si"] > 0))
      taking.stop(
        "no-flow",
        `the flow comes to ${bothFlows(value["~si"], customary)}, which is none. Check the readings: the form does not reach so far.`,
      );
    return taking.made({ name: each.name, on: each.on, by, value: withLeaks(taking, each, value) });
  });
  return measured("flow", ["stream", "measured"], measurements, ledger);
}

/** The key of the survey that the measurement stands under. */
function wayOf(each: FlowSurvey): string {
  const ways = ["notch", "crest", "bucket", "floats", "meter", "salt", "nozzles", "staff"] as const;
  return each.saltFeed ? "salt feed" : (ways.find((way) => each[way]) ?? "flow");
}

/** Works the flow out in the way it was measured. */
function flowBy(taking: Taking, each: FlowSurvey, conditions: Conditions): Taken<"volume flow"> {
  if (each.notch) return notchFlow(taking, each.notch, conditions);
  if (each.crest) return crestFlow(taking, each.crest, conditions);
  if (each.bucket) return bucketFlow(taking, each.bucket);
  if (each.floats) return floatsFlow(taking, each.floats);
  if (each.meter) return meterFlow(taking, each.meter);
  if (each.salt) return saltFlow(taking, each.salt);
  if (each.saltFeed) return saltFeedFlow(taking, each.saltFeed);
  if (each.nozzles) return nozzlesFlow(taking, each.nozzles, conditions);
  if (each.staff) return staffFlow(taking, each.staff);
  return statedFlow(taking, each.flow as Quantity<"volume flow">);
}

/** A flow that was stated. */
function statedFlow(taking: Taking, flow: Quantity<"volume flow">): Taken<"volume flow"> {
  return {
    by: "stated",
    value: taking.reading(
      "flow",
      {
        what: "flow of the stream",
        how: "gauge the stream again: a notch, or fillings of a vessel, over the season",
        spreadKey: "stream.flow",
      },
      flow,
    ),
  };
}

/** What went past the place that was measured is added, with a spread of its own. */
function withLeaks(
  taking: Taking,
  { leaks }: FlowSurvey,
  value: Quantity<"volume flow">,
): Quantity<"volume flow"> {
  if (!leaks) return value;
  if (leaks["~sources"]) return value.plus(leaks);
  taking.assume(
    ["leaks"],
    "spread of the leakage",
    "± 50 %",
    commonPractice.at("leakage is judged by eye", "practice"),
  );
  return value.plus(
    taking.spread(leaks, 0.5, "leaks", "what leaks past", "catch the leak in a bucket and time it"),
  );
}
