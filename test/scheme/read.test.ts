import { readFileSync } from "node:fs";
import { join } from "node:path";

import { read } from "@leat/quantity/text";
import { FileError, problemText, readSurvey, surveyJsonSchema } from "@leat/scheme/read";
import fc from "fast-check";
import { describe, expect, it } from "vitest";

import { fiveLines } from "./surveys.ts";

/** Problems of a file, a line each; nothing where there are none. */
function problems(text: string): string[] {
  try {
    readSurvey(text, "s.yaml");
    return [];
  } catch (error) {
    if (!(error instanceof FileError)) throw error;
    expect(error.message).toBe(error.problems.map(problemText).join("\n"));
    return error.problems.map(problemText);
  }
}

const instead = (line: string, other: string): string => fiveLines.replace(line, other);

describe("a survey file", () => {
  it.each([
    [
      "an unknown key",
      `${fiveLines}\nwhel: { efficiency: 70 % }`,
      "s.yaml:6:1: survey/unknown-key: whel is not known here; is it wheel? Known are leat, site, stream, fall, reaches, jets, wheel, machine, cable, bank, divert.",
    ],
    [
      "an unknown key inside",
      instead("cable: 300 ft", "cable: { lenght: 3 m, length: 300 ft }"),
      "s.yaml:4:10: survey/unknown-key: cable.lenght is not known here; is it length? Known are length, size, metal, temperature.",
    ],
    [
      "a missing unit",
      instead("300 ft", "300"),
      "s.yaml:4:8: survey/no-unit: cable.length = 300 has no unit; a length is needed, such as 300 ft.",
    ],
    [
      "a wrong dimension",
      instead("400 gal/min", "12 ft"),
      "s.yaml:2:9: survey/dimension: stream.flow = 12 ft is a length; a volume flow is needed, such as 400 gal/min.",
    ],
    [
      "a flow given as the fall",
      instead("110 ft", "12 gal/min"),
      "s.yaml:1:7: survey/dimension: fall.gross = 12 gal/min is a volume flow; a length or a pressure is needed, such as 110 ft.",
    ],
    [
      "a negative head",
      instead("110 ft", "-110 ft"),
      "s.yaml:1:7: survey/sign: fall.gross = -110 ft is negative; a length or a pressure above zero is needed. Check its sign.",
    ],
    [
      "a wire size behind a # that begins a comment",
      instead("cable: 300 ft", "cable:\n  length: 300 ft\n  size: #2"),
      "s.yaml:6:9: file/comment: size is empty, because an unquoted # begins a comment (#2). Write a wire size as 2 AWG, or put it in quotes.",
    ],
    [
      "a section left empty",
      instead("bank: 48 V", "bank:"),
      "s.yaml:5:6: survey/empty: bank.volts is empty; write a value such as 48 V.",
    ],
    [
      "a missing section",
      fiveLines.replace("\nbank: 48 V", ""),
      "s.yaml:1:1: survey/missing: bank is missing; write the nominal volts of the battery bank, such as bank: 48 V.",
    ],
    [
      "a list where one value is needed",
      instead("cable: 300 ft", "cable: { length: [300 ft] }"),
      "s.yaml:4:18: survey/shape: cable.length is a list; one value is needed.",
    ],
    [
      "a map where a list is needed",
      `${fiveLines}\njets: { nozzles: { a: 5 mm } }`,
      "s.yaml:6:18: survey/shape: jets.nozzles is a map of keys; a list is needed.",
    ],
    [
      "an unknown pipe",
      instead("reaches: 900 ft", "reaches: [{ length: 900 ft, pipe: 4 in wood }]"),
      's.yaml:3:35: survey/size: reaches.1.pipe = "4 in wood" is not read as a pipe: write it as 4 in PE DR 11, 2 in PE SIDR 15, 110 mm PE100 SDR 17, 4 in PVC Sch 40, 4 in PVC SDR 26, 110 mm PVC PN 10 or 3 in steel Sch 40.',
    ],
    [
      "a pipe that is not made",
      instead("reaches: 900 ft", "reaches: [{ length: 900 ft, pipe: 4 in PE DR 12 }]"),
      "s.yaml:3:35: survey/size: reaches.1.pipe = PE in iron pipe sizes: 4 in is not made in DR 12; it is made in DR 7, DR 7.3, DR 9, DR 9.3, DR 11, DR 13.5, DR 15.5, DR 17, DR 21, DR 26, DR 32.5.",
    ],
    [
      "two ways of measuring one thing",
      instead("400 gal/min", "{ flow: 400 gal/min, bucket: [{ volume: 5 gal, time: 3 s }] }"),
      "s.yaml:2:38: survey/two-ways: stream.bucket stands beside flow; give one way of measuring.",
    ],
    [
      "a count that is none",
      `${fiveLines}\njets: { count: 2.5 }`,
      's.yaml:6:16: survey/count: jets.count = "2.5" is not a count; write a whole number from 1 to 999.',
    ],
    [
      "a word that is none of the list",
      instead("cable: 300 ft", "cable: { length: 300 ft, metal: tin }"),
      's.yaml:4:33: survey/word: cable.metal = "tin" is not known here; write one of copper, aluminium.',
    ],
    [
      "an empty file",
      "",
      "s.yaml:1:1: file/empty: the file is empty. Write the five lines that a first scheme needs: fall, stream, reaches, cable, bank.",
    ],
    [
      "a sentence",
      "hello there",
      "s.yaml:1:1: file/not-a-survey: this is not a survey: it has no sections. Write lines such as fall: 110 ft.",
    ],
    [
      "the same key twice",
      `${fiveLines}\nfall: 12 ft`,
      "s.yaml:6:1: file/duplicate-key: the same key stands twice. Keep one.",
    ],
    [
      "a merge",
      `${fiveLines}\n<<: { a: 1 }`,
      "s.yaml:6:1: file/merge: the merge key << is refused. Write the values out.",
    ],
    [
      "a tab",
      "fall: 110 ft\nsite:\n\tname: x",
      "s.yaml:3:1: file/tab: a tab indents this line. Use spaces.",
    ],
    [
      "a second document",
      `${fiveLines}\n---\nfall: 3 m`,
      "s.yaml:6:1: file/second-document: a second document begins here. Put one survey in one file.",
    ],
    [
      "a tag",
      instead("110 ft", "!height 110 ft"),
      "s.yaml:1:7: file/tag: a tag (!) is refused. Write the plain value.",
    ],
    [
      "another version",
      `${fiveLines}\nleat: 2`,
      's.yaml:6:7: survey/word: leat = "2" is not known here; write one of 1.',
    ],
  ])("with %s is refused in words", (_, text, message) => {
    expect(problems(text).join("\n")).toContain(message);
  });

  it.each([
    ["012", "is it 1/0 or 12?"],
    ["00", "is it 2/0 or 0?"],
  ])("refuses the wire size %s unquoted, because it can be read in two ways", (size, question) => {
    const [problem, ...more] = problems(
      instead("cable: 300 ft", `cable: { length: 300 ft, size: ${size} }`),
    );
    expect(problem).toBe(
      `s.yaml:4:32: survey/ambiguous: cable.size = ${size}: ${question} A wire size is needed, such as 2 AWG.`,
    );
    expect(more).toEqual([]);
  });

  it("refuses 1,5 m as ambiguous and never guesses", () => {
    const [problem] = problems(instead("300 ft", "1,5 m"));
    expect(problem).toContain("s.yaml:4:8: survey/ambiguous: cable.length = 1,5");
  });

  it("refuses what is not YAML with its place", () => {
    const [problem] = problems("fall: {110 ft\nstream: [");
    expect(problem).toMatch(/^s\.yaml:\d+:\d+: file\/not-yaml: this is not YAML: /u);
  });

  it("refuses a file of 10 MB before it is parsed", () => {
    expect(problems("a: b\n".repeat(2_000_000))).toEqual([
      "s.yaml:1:1: file/too-large: the file has 10000000 characters, and a survey at most 262144. Is it the right file?",
    ]);
  });

  it("refuses a bomb of aliases, and depth", () => {
    const bomb = [
      "a: &a [x, x]",
      ...Array.from("bcdefgh", (c, i) => `${c}: &${c} [*${"abcdefgh"[i]}, *${"abcdefgh"[i]}]`),
    ].join("\n");
    expect(problems(bomb).join("\n")).toContain("file/alias");
    expect(problems(`a: ${"[".repeat(40)}${"]".repeat(40)}`).join("\n")).toContain(
      "file/too-large",
    );
  });

  it("takes an alias for one value written above it", () => {
    const text = instead("cable: 300 ft", "cable: *far").replace(
      "reaches: 900 ft",
      "reaches: &far 900 ft",
    );
    expect(String(readSurvey(text).survey.cable.length)).toBe("900 ft");
  });

  it("tells all problems at once, in the order of the file", () => {
    const told = problems(
      "bank: 48\nfall: -3 m\nstraem: 4 L/s\ncable: 1,5 m\nreaches: [{ length: 3 psi }]",
    );
    expect(told.length).toBeGreaterThanOrEqual(6);
    const lines = told.map((line) => Number(line.split(":")[1]));
    expect(lines).toEqual(lines.toSorted((a, b) => a - b));
  });

  it("takes 50 psi as a gauge reading and says so", () => {
    const { survey, assumed } = readSurvey(instead("110 ft", "50 psi"));
    expect(String(survey.fall.measured[0]!.gauge)).toBe("50 psi");
    expect(survey.fall.measured[0]!.gross).toBeUndefined();
    expect(assumed.find(({ path }) => path.join(".") === "fall.gross")?.value).toBe(
      "50 psi, a gauge at nozzle height on the full pipe at rest; turned to head with the density of the water",
    );
  });

  it("keeps the text and the instrument of a reading", () => {
    const { survey } = readSurvey(
      instead(
        "400 gal/min",
        "{ notch: { shape: rectangular, width: 16 in, head: 3 1/2 in, read to: 1/8 in } }",
      ),
      "folder/creek.yaml",
    );
    expect(survey.id).toBe("creek");
    expect(survey.stream.measured[0]!.notch?.head.reading()).toMatchObject({
      text: "3 1/2 in",
      resolution: 0.125,
      assumed: false,
    });
  });

  it("names the source of a ± by file and path, so that a second reading gives the same", () => {
    const once = readSurvey(instead("110 ft", "110 ± 2 ft"), "creek.yaml").survey.fall.measured[0]!
      .gross!;
    const twice = readSurvey(instead("110 ft", "110 ± 2 ft"), "creek.yaml").survey.fall.measured[0]!
      .gross!;
    expect([...once.sources().keys()]).toEqual(["creek.fall.gross"]);
    expect(once.minus(twice).sources().size).toBe(0);
  });

  it("never throws anything but its own error, whatever the text", () => {
    const word = fc.constantFrom(
      "fall",
      "stream",
      ":",
      " ",
      "\n",
      "-",
      "{",
      "}",
      "[",
      "]",
      "110 ft",
      "&a",
      "*a",
      "#2",
      "!t",
      '"',
      "'",
      "|",
      ">",
      "\t",
      "<<",
      "---",
      "48 V",
      "reaches",
      "length",
      "%",
      "\u0000",
      "é",
    );
    fc.assert(
      fc.property(
        fc.oneof(
          fc.string({ maxLength: 80 }),
          fc.array(word, { maxLength: 40 }).map((words) => words.join("")),
        ),
        (text) => {
          problems(text);
        },
      ),
      { numRuns: 2000, seed: 5 },
    );
  });
});

describe("the JSON Schema of the survey file", () => {
  interface Node {
    properties?: Record<string, Node>;
    items?: Node;
    anyOf?: Node[];
    examples?: string[];
    type?: string;
    description?: string;
    additionalProperties?: boolean;
  }
  const schema = surveyJsonSchema() as Node;

  /** Whether a value fits a node, as far as this schema goes: types, keys, alternatives. */
  function fits(node: Node, value: unknown): boolean {
    if (node.anyOf) return node.anyOf.some((one) => fits(one, value));
    if (node.type === "string") return typeof value === "string";
    if (node.type === "array")
      return Array.isArray(value) && value.every((item) => fits(node.items!, item));
    return (
      typeof value === "object" &&
      value !== null &&
      Object.entries(value).every(
        ([key, child]) => node.properties?.[key] !== undefined && fits(node.properties[key], child),
      )
    );
  }

  it("knows the sections, closes them, and lets five of them be one value", () => {
    expect(Object.keys(schema.properties!)).toEqual([
      "leat",
      "site",
      "stream",
      "fall",
      "reaches",
      "jets",
      "wheel",
      "machine",
      "cable",
      "bank",
      "divert",
    ]);
    expect(schema.additionalProperties).toBe(false);
    for (const section of ["stream", "fall", "reaches", "cable", "bank"]) {
      expect(schema.properties![section]!.anyOf).toHaveLength(2);
    }
    expect(
      fits(schema, {
        fall: "110 ft",
        stream: "400 gal/min",
        reaches: "900 ft",
        cable: "300 ft",
        bank: "48 V",
      }),
    ).toBe(true);
    expect(fits(schema, { fal: "110 ft" })).toBe(false);
  });

  it("gives a description and an example for every value, and each example is read", () => {
    const examples: string[] = [];
    const walk = (node: Node): void => {
      if (node.type === "string") {
        expect(node.description).toBeTruthy();
        expect(node.examples?.length).toBeGreaterThan(0);
        examples.push(...(node.examples ?? []));
      }
      for (const child of [
        ...Object.values(node.properties ?? {}),
        ...(node.anyOf ?? []),
        ...(node.items ? [node.items] : []),
      ])
        walk(child);
    };
    walk(schema);
    const quantities = examples.filter((text) =>
      /^[\d.,/ ]+ ?(ft|in|mm|gal\/min|psi|V|W|s|L|%|°|°F|°C|gal)$/.test(text),
    );
    expect(quantities.length).toBeGreaterThan(20);
    for (const text of quantities) expect(() => read(text)).not.toThrow();
  });

  it("gives examples that are each taken where they stand", () => {
    const leaves: [path: string[], example: string][] = [];
    const walk = (node: Node, path: string[]): void => {
      // Of a section that may be one value, the whole of it: the value stands in there too.
      const at = node.anyOf?.[1] ?? node;
      for (const example of at.examples ?? []) leaves.push([path, example]);
      for (const [key, child] of Object.entries(at.properties ?? {})) walk(child, [...path, key]);
      if (at.items) walk(at.items, [...path, "0"]);
    };
    walk(schema, []);
    expect(leaves.length).toBeGreaterThan(60);
    for (const [path, example] of leaves) {
      const value = path.reduceRight<unknown>(
        (inner, key) => (key === "0" ? [inner] : { [key]: inner }),
        example,
      );
      // A key may be the beginning of another, so that what follows it counts.
      const place = path.map((key) => (key === "0" ? "1" : key)).join(".");
      // What else is missing is told; the example itself is not.
      const told = problems(JSON.stringify(value));
      expect(told.filter((line) => line.split(": ")[2]?.startsWith(`${place} =`))).toEqual([]);
    }
  });
});

describe("the examples", () => {
  const folder = join(import.meta.dirname, "../../docs/examples");
  const open = (name: string): string => readFileSync(join(folder, name), "utf8");

  it.each(["fern-gully", "alder-brook", "hazel-burn", "five-lines"])(
    "%s is read without a problem",
    (name) => {
      const text = open(`${name}.yaml`);
      expect(() => readSurvey(text, `${name}.yaml`, open)).not.toThrow();
      if (name !== "five-lines") expect(text.split("\n")[0]).toContain("an invented site");
    },
  );

  it("say in their records too that they are invented", () => {
    for (const name of ["rowan-water", "salt-left", "salt-right", "salt-calibration"])
      expect(open(`hazel-burn/${name}.csv`).split("\n")[0]).toContain("invented");
  });
});
