import { readPipe } from "@leat/pipe-sizes";
import * as z from "zod";

import { fittingNames } from "../fittings.ts";
import { count, field, named, oneOf, size, temperature, words } from "./field.ts";
import { leaveRules, throughTheYear, wayOfFall, wayOfFlow } from "./ways.ts";

const length = { kinds: ["length"], example: "900 ft" };
const upToWhole = (kind: string): { kind: string; least: string; most: string } => ({
  kind,
  least: "0 %",
  most: "100 %",
});
const share = (says: string, example: string): ReturnType<typeof field> =>
  field({ kinds: ["efficiency"], says, example, between: upToWhole("efficiency") });

const fitting = z.strictObject({
  what: oneOf("fitting", fittingNames()).optional(),
  k: field({
    kinds: ["coefficient"],
    says: "loss coefficient, where no fitting is named",
    example: "0.5",
  }).optional(),
  count: count("how many").optional(),
});

const reach = z.strictObject({
  pipe: named(
    "pipe as it is sold",
    ["4 in PE DR 11", "110 mm PE100 SDR 17", "4 in PVC Sch 40"],
    readPipe,
  ).optional(),
  bore: field({
    ...length,
    says: "inside diameter, where it is known better than by the pipe's name",
    example: "3.633 in",
  }).optional(),
  roughness: field({
    ...length,
    says: "roughness of the wall, where it is known better",
    example: "0.01 mm",
  }).optional(),
  length: field({ ...length, says: "length along the pipe" }),
  fittings: z.array(fitting).optional(),
});

const survey = z
  .strictObject({
    leat: oneOf("version of this form of file", ["1"]).optional(),
    site: z
      .strictObject({
        name: words("what people call it", ["Fern Gully (invented)"]).optional(),
        latitude: field({
          kinds: ["angle"],
          says: "latitude, for gravity",
          example: "41°",
          sign: "any",
          between: { kind: "angle", least: "-90°", most: "90°" },
        }).optional(),
        elevation: field({
          ...length,
          says: "height over the sea, for gravity",
          example: "1,250 ft",
          sign: "any",
          between: { kind: "length", least: "-450 m", most: "9000 m" },
        }).optional(),
        "water temperature": temperature("temperature of the water", "50 °F", {
          least: "0 °C",
          most: "100 °C",
        }).optional(),
      })
      .optional(),
    stream: z.strictObject({
      ...wayOfFlow,
      measured: z
        .array(z.strictObject(wayOfFlow))
        .min(1)
        .meta({ description: "measurements of the flow, one row each" })
        .optional(),
      ...throughTheYear,
      leave: field({
        kinds: ["volume flow", "ratio"],
        says: "what must stay in the stream: a flow, or a share of the measured flow; or leave by rules",
        example: "30 %",
        sign: "non-negative",
        between: upToWhole("ratio"),
      }).optional(),
      "leave by rules": leaveRules.optional(),
    }),
    fall: z.strictObject({
      ...wayOfFall,
      measured: z
        .array(z.strictObject(wayOfFall))
        .min(1)
        .meta({ description: "measurements of the fall, one row each" })
        .optional(),
    }),
    reaches: z.array(reach).min(1),
    jets: z
      .strictObject({
        nozzles: z
          .array(field({ ...length, says: "bore of a nozzle that is open", example: "5/8 in" }))
          .min(1)
          .optional(),
        count: count("how many nozzles, where no bores are given").optional(),
        coefficient: field({
          kinds: ["coefficient"],
          says: "discharge coefficient of the nozzles",
          example: "0.95",
          between: { kind: "coefficient", least: "0", most: "1" },
        }).optional(),
        "velocity coefficient": field({
          kinds: ["coefficient"],
          says: "velocity coefficient of the nozzles",
          example: "0.97",
          between: { kind: "coefficient", least: "0", most: "1" },
        }).optional(),
      })
      .optional(),
    wheel: z
      .strictObject({
        efficiency: share("shaft power over the power of the jets", "70 %").optional(),
        diameter: field({ ...length, says: "pitch diameter", example: "4 in" }).optional(),
        "speed ratio": field({
          kinds: ["ratio"],
          says: "speed of the pitch circle over the speed of the jet",
          example: "0.46",
        }).optional(),
      })
      .optional(),
    machine: z
      .strictObject({
        efficiency: share("direct-current power out over shaft power in", "80 %").optional(),
      })
      .optional(),
    cable: z.strictObject({
      length: field({ ...length, says: "length of the cable, one way", example: "300 ft" }),
      size: size("wire size").optional(),
      metal: oneOf("metal", ["copper", "aluminium"]).optional(),
      temperature: temperature("temperature of the conductor", "40 °C", {
        least: "-60 °C",
        most: "150 °C",
      }).optional(),
    }),
    bank: z.strictObject({
      volts: field({
        kinds: ["voltage"],
        says: "nominal volts of the battery bank",
        example: "48 V",
      }),
      charging: field({
        kinds: ["voltage"],
        says: "volts at the bank while it is charged",
        example: "54.5 V",
      }).optional(),
      chemistry: oneOf("what it is made of", [
        "flooded lead-acid",
        "sealed lead-acid",
        "lithium iron phosphate",
      ]).optional(),
    }),
    divert: z
      .strictObject({
        margin: field({
          kinds: ["ratio"],
          says: "added to the power that must go somewhere",
          example: "25 %",
          sign: "non-negative",
        }).optional(),
        volts: field({
          kinds: ["voltage"],
          says: "volts at which diversion is switched in",
          example: "56 V",
        }).optional(),
        element: z
          .strictObject({
            power: field({
              kinds: ["power"],
              says: "rated power of one element",
              example: "2000 W",
            }),
            volts: field({
              kinds: ["voltage"],
              says: "rated volts of the element",
              example: "120 V",
            }),
          })
          .optional(),
        tank: field({
          kinds: ["volume"],
          says: "water in the tank that is heated",
          example: "50 gal",
        }).optional(),
        second: words("the second, independent path, in words", [
          "air heater on its own relay",
        ]).optional(),
      })
      .optional(),
  })
  .meta({
    title: "Leat survey",
    description: "A stream, its fall and the scheme on it, in the units people write.",
  });

/** The survey file, as zod sees it: every scalar is text. */
export const surveySchema: z.ZodType = survey;

/** The same for what was measured: what is chosen later may be absent. */
export const fieldSurveySchema: z.ZodType = survey.partial({
  fall: true,
  reaches: true,
  cable: true,
  bank: true,
});

/** Sections that may be written as one value, and the key that the value stands for. */
export const shorthands: Readonly<Record<string, { readonly key: string; readonly list?: true }>> =
  {
    stream: { key: "flow" },
    fall: { key: "gross" },
    reaches: { key: "length", list: true },
    cable: { key: "length" },
    bank: { key: "volts" },
  };

/**
 * The JSON Schema of the survey file, for editors: the sections that may be one value say so.
 *
 * @returns The schema, draft 2020-12.
 */
export function surveyJsonSchema(): Record<string, unknown> {
  const schema = z.toJSONSchema(surveySchema, { io: "input" }) as {
    properties: Record<string, unknown>;
  };
  for (const [section, { key, list }] of Object.entries(shorthands)) {
    const whole = schema.properties[section] as {
      properties?: Record<string, object>;
      items?: { properties: Record<string, object> };
    };
    const one = (list ? whole.items : whole)?.properties?.[key];
    schema.properties[section] = { anyOf: [one, whole] };
  }
  return schema;
}

interface SchemaNode {
  readonly properties?: Record<string, SchemaNode>;
  readonly items?: SchemaNode;
  readonly examples?: readonly string[];
  readonly description?: string;
}

let drawn: SchemaNode | undefined;

/**
 * What the schema says of a place in the file.
 *
 * @param path - Keys and row numbers.
 * @returns The keys that are known there, an example and a description.
 */
export function schemaAt(path: readonly (string | number)[]): {
  keys: readonly string[];
  example: string | undefined;
  says: string | undefined;
} {
  // Drawn up once: a file may have thousands of problems.
  drawn ??= z.toJSONSchema(surveySchema, { io: "input" }) as SchemaNode;
  let node: SchemaNode | undefined = drawn;
  for (const part of path) node = typeof part === "number" ? node?.items : node?.properties?.[part];
  return {
    keys: Object.keys(node?.properties ?? {}),
    example: node?.examples?.[0],
    says: node?.description,
  };
}
