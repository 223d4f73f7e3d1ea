import { type Message, message } from "../../calibration/message.ts";
import { Refusal } from "../../calibration/refusal.ts";
import type { DecimalMark } from "../../calibration/typed-number.ts";
import { omitUndefined } from "../compute/omit-undefined.ts";
import type { MethodName } from "../methods/index.ts";
import { type DetailField, groupsOf, type NumberFieldName, numberFields } from "./detail-fields.ts";
import type { Details } from "./details.ts";
import { typedDecimal } from "./typed-reading.ts";

type Fields = Readonly<Record<string, string>>;

/** What would be right in a field of words. */
type Example = `weighing.details.example.${"body" | "liquid" | "lot"}`;

const nameOf = (name: DetailField): Message => message(`weighing.fields.${name}`);

/** What the form of a method states about its weighing. Throws Refusal with the field and what would be right. */
export function typedDetails(fields: Fields, method: MethodName, ownMark?: DecimalMark): Details {
  const own = new Set<string>(groupsOf(method).flatMap(({ fields: all }) => [...all]));
  const has = (name: DetailField) => own.has(name) && (fields[name] ?? "").trim() !== "";
  const number = (name: NumberFieldName) => numberOf(name, fields, ownMark);
  const optional = (name: NumberFieldName) => (has(name) ? number(name) : undefined);
  const words = (name: DetailField, example: Example) => {
    const text = (fields[name] ?? "").trim();
    if (text === "")
      throw new Refusal("weighing.details.empty", { field: nameOf(name), example: message(example) }, name);
    return text;
  };
  const shown = (name: NumberFieldName) => ({ text: number(name), unit: "g" });
  const wire = optional("wire");
  const hangs = has("hanger-in-liquid") || has("hanger-in-air");
  const airStated = has("air-temperature") || has("air-pressure") || has("air-humidity");
  const pieces = has("odd-density") ? number("pieces") : optional("pieces");
  if (pieces !== undefined && !/^\d+$/.test(pieces))
    throw new Refusal("weighing.details.no-count", { field: nameOf("pieces"), typed: pieces }, "pieces");
  return omitUndefined({
    pieces: pieces === undefined ? undefined : Number(pieces),
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
      wire === undefined && !hangs
        ? undefined
        : omitUndefined({
            wire_mm: wire,
            in_liquid: hangs ? shown("hanger-in-liquid") : undefined,
            in_air: has("hanger-in-air") ? shown("hanger-in-air") : undefined,
          }),
    liquid: liquidTyped(fields, { number, optional, words, shown, has }),
    wetting_agent: fields["wetting-agent"] === "yes" ? (true as const) : undefined,
    gradient_c: optional("gradient"),
    air: airStated
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
    drift_fit: own.has("drift") ? lifts.find((lift) => lift === fields.drift) : undefined,
    paired: fields.paired === "yes" ? (true as const) : undefined,
    flask: has("flask-warmer")
      ? {
          liquid_g: number("flask-liquid"),
          warmer_c: number("flask-warmer"),
          warmer_u_c: number("flask-warmer-u"),
        }
      : undefined,
  });
}

const lifts = ["kept", "wet", "dried"] as const;

interface Entries {
  number(name: NumberFieldName): string;
  optional(name: NumberFieldName): string | undefined;
  words(name: DetailField, example: string): string;
  shown(name: NumberFieldName): { text: string; unit: string };
  has(name: DetailField): boolean;
}

function liquidTyped(fields: Fields, { number, optional, words, shown, has }: Entries): Details["liquid"] {
  const kind = fields.liquid;
  if (kind !== "stated" && kind !== "measured") return undefined;
  const named = omitUndefined({
    name: words("liquid-name", "weighing.details.example.liquid"),
    lot: has("liquid-lot") ? words("liquid-lot", "weighing.details.example.lot") : undefined,
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

function numberOf(name: NumberFieldName, fields: Fields, mark: DecimalMark = "."): string {
  const { from, to, unit } = numberFields[name];
  try {
    return typedDecimal(fields[name] ?? "", { from, to, unit, mark }, name);
  } catch (error) {
    if (!(error instanceof Refusal)) throw error;
    const what = nameOf(name);
    throw new Refusal("form.entry", { what, says: { code: error.code, params: error.params } }, name);
  }
}
