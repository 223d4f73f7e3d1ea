import { z } from "zod";
import { keysOf } from "../../../calibration/keyed.ts";
import { type Message, message } from "../../../calibration/message.ts";
import { omitUndefined } from "../../compute/omit-undefined.ts";
import type { MethodName } from "../../methods/index.ts";
import {
  type DetailField,
  groupsOf,
  type NumberFieldName,
  numberFields,
  wordFields,
} from "../../weighing/detail-fields.ts";
import type { Details } from "../../weighing/details.ts";
import { type Entries, refuseEntry } from "../forms/form.ts";

const nameOf = (name: DetailField): Message => message(`weighing.fields.${name}`);
const numberNames = keysOf(numberFields);
const lifts = ["kept", "wet", "dried"] as const;

/** What the form of a method states about its weighing; entries of other methods are left out. */
export const detailsForm =
  (method: MethodName) =>
  ({ maybeDecimal, maybeText, box }: Entries) => {
    const own = new Set<string>(groupsOf(method).flatMap(({ fields }) => [...fields]));
    const none = z
      .unknown()
      .optional()
      .transform(() => undefined);
    const numbers = numberNames.map((name) => {
      const asked = { ...numberFields[name], displayed: true, what: nameOf(name) };
      return [name, own.has(name) ? maybeDecimal(asked) : none] as const;
    });
    const words = wordFields.map((name) => [name, own.has(name) ? maybeText() : none] as const);
    return z
      .intersection(
        z.object(Object.fromEntries<z.ZodType<string | undefined>>([...numbers, ...words])),
        z.object({ "wetting-agent": box(), paired: box() }),
      )
      .transform(({ "wetting-agent": wetting, paired, ...typed }, context) =>
        detailsOf({ wetting, paired, ...statedIn(typed, context) }),
      );
  };

/** What would be right in an entry of words. */
type Example = `weighing.details.example.${"body" | "liquid" | "lot"}`;

interface Stated {
  wetting: boolean;
  paired: boolean;
  has(name: DetailField): boolean;
  /** an entry that may be empty */
  optional(name: DetailField): string | undefined;
  /** one that must not be, since another one needs it */
  number(name: NumberFieldName): string;
  words(name: DetailField, example: Example): string;
  count(name: NumberFieldName): number | undefined;
}

/** The entries as they depend on each other; each that is missing or wrong then is refused. */
function statedIn(
  typed: Readonly<Record<string, string | boolean | undefined>>,
  context: z.RefinementCtx,
): Omit<Stated, "wetting" | "paired"> {
  const optional = (name: DetailField) => {
    const value = typed[name];
    return typeof value === "string" ? value : undefined;
  };
  const needed = (name: DetailField, missing: Message) => {
    const value = optional(name);
    if (value === undefined) refuseEntry(context, name, missing);
    return value ?? "";
  };
  return {
    has: (name) => optional(name) !== undefined,
    optional,
    number: (name) =>
      needed(name, message("form.entry", { what: nameOf(name), message: message("form.number.empty") })),
    words: (name, example) =>
      needed(name, message("weighing.details.empty", { field: nameOf(name), example: message(example) })),
    count: (name) => {
      const text = optional(name);
      if (text !== undefined && !/^\d+$/.test(text))
        refuseEntry(
          context,
          name,
          message("weighing.details.no-count", { field: nameOf(name), typed: text }),
        );
      return text === undefined ? undefined : Number(text);
    },
  };
}

function detailsOf(stated: Stated): Details {
  const { has, number, optional, words, count, wetting, paired } = stated;
  const shown = (name: NumberFieldName) => ({ text: number(name), unit: "g" as const });
  const hangs = has("hanger-in-liquid") || has("hanger-in-air");
  if (has("odd-density")) number("pieces");
  const pieces = count("pieces");
  return omitUndefined({
    pieces,
    odd_g_cm3: pieces === undefined ? undefined : optional("odd-density"),
    added: has("added-mass")
      ? [
          {
            name: words("added-name", "weighing.details.example.body"),
            mass_g: number("added-mass"),
            u_mass_g: number("added-mass-u"),
            density_g_cm3: number("added-density"),
            u_density_g_cm3: number("added-density-u"),
          },
        ]
      : undefined,
    hanger:
      has("wire") || hangs
        ? omitUndefined({
            wire_mm: optional("wire"),
            in_liquid: hangs ? shown("hanger-in-liquid") : undefined,
            in_air: has("hanger-in-air") ? shown("hanger-in-air") : undefined,
          })
        : undefined,
    liquid: liquidOf(stated),
    wetting_agent: wetting ? (true as const) : undefined,
    gradient_c: optional("gradient"),
    air:
      has("air-temperature") || has("air-pressure") || has("air-humidity")
        ? {
            temperature_c: number("air-temperature"),
            pressure_hpa: number("air-pressure"),
            humidity_pct: number("air-humidity"),
          }
        : undefined,
    steps:
      has("step-dry") || has("step-wet")
        ? omitUndefined({ dry_g: optional("step-dry"), wet_g: optional("step-wet") })
        : undefined,
    drift_fit: lifts.find((lift) => lift === optional("drift")),
    paired: paired ? (true as const) : undefined,
    flask: has("flask-warmer")
      ? {
          liquid_g: number("flask-liquid"),
          warmer_c: number("flask-warmer"),
          warmer_u_c: number("flask-warmer-u"),
        }
      : undefined,
  });
}

function liquidOf({ has, number, optional, words }: Stated): Details["liquid"] {
  const shown = (name: NumberFieldName) => ({ text: number(name), unit: "g" as const });
  const kind = optional("liquid");
  if (kind !== "stated" && kind !== "measured") return undefined;
  const named = omitUndefined({
    name: words("liquid-name", "weighing.details.example.liquid"),
    lot: optional("liquid-lot"),
    expansion_per_c: optional("liquid-expansion"),
  });
  if (kind === "stated")
    return {
      kind,
      ...named,
      density_g_cm3: number("liquid-density"),
      u_g_cm3: number("liquid-density-u"),
      ...omitUndefined({ stated_at_c: optional("liquid-stated-at") }),
    };
  const volume = { volume_cm3: number("body-volume"), u_volume_cm3: number("body-volume-u") };
  const weighed = has("body-rise")
    ? { rise: shown("body-rise") }
    : { dry: shown("body-dry"), immersed: shown("body-immersed") };
  return { kind, ...named, ...volume, weighed };
}
