import { NonPhysicalError, type Notice } from "@leat/formula";

import { bothFlows } from "../both.ts";

// What the analyses say names their own inputs; a survey file has other names for them.

/** Keys of the survey file that stand for inputs of the analyses. */
const keys: Readonly<Record<string, readonly string[]>> = {
  candidates: ["stream", "built for"],
  exceeded: ["stream", "leave by rules"],
  firstMonth: ["stream", "year from"],
  lowFlowMonths: ["stream", "leave by rules", "low months"],
  rule: ["stream", "leave by rules"],
  share: ["stream", "leave by rules"],
  visits: ["stream", "measured"],
};

/** Advice that only a caller of the analysis can take, and what the keeper of a survey can do instead. */
const advice: readonly (readonly [from: RegExp, to: string])[] = [
  [/^(?:[a-z]+(?:-[a-z]+)+|visits): /u, ""],
  [/ State the share that may be missing if their low season is known to be there\./u, ""],
  [
    / State another first month, or the share of days that may be missing\./u,
    " Give a longer record, or the month that its years begin with (water year).",
  ],
  [/ Give a longer record, or another first month\./u, " Give a longer record."],
  [/ from row \d+, /u, " from "],
  [/candidate \d+, (\S+ \S+), /gu, "$1 "],
  [/candidate \d+, /gu, ""],
];

/**
 * A notice of an analysis in the words of a survey, with its place in the file.
 *
 * @param notice - The notice; one that knows its place already is left as it is.
 * @param days - The days of the visits, in the order in which the analysis was given them.
 * @returns The notice.
 */
export function inStreamWords(notice: Notice, days: readonly string[] = []): Notice {
  const [first] = notice.path;
  if (first === "stream" || first === "fall" || first === "site") return notice;
  const plain = advice.reduce((text, [from, to]) => text.replace(from, to), notice.message);
  return {
    ...notice,
    path: keys[String(first)] ?? ["stream"],
    message: plain
      .replaceAll(
        /visit (\d+)(?:, \d{4}-\d\d-\d\d)?/gu,
        (_, row: string) => `the visit of ${days[Number(row)] ?? row}`,
      )
      // Small flows in the units that surveys are written in.
      .replaceAll(/\b(0(?:\.\d+)?) m³\/s/gu, (_, flow: string) => bothFlows(Number(flow))),
  };
}

/**
 * Runs analyses; what nothing physical can have is told in the words of a survey, with its place in the file.
 *
 * @param run - Runs them.
 * @param days - The days of the visits.
 * @returns What they give.
 * @throws NonPhysicalError in those words.
 */
export function guarded<T>(run: () => T, days: readonly string[] = []): T {
  try {
    return run();
  } catch (error) {
    if (!(error instanceof NonPhysicalError)) throw error;
    throw new NonPhysicalError(error.notices.map((notice) => inStreamWords(notice, days)));
  }
}
