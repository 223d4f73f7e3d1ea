import { Refusal as Refused } from "../../calibration/refusal.ts";
import type { DecimalMark } from "../../calibration/typed-number.ts";
import { present } from "../compute/present.ts";
import type { MethodName } from "../methods/index.ts";
import { type DetailField, groupsOf, type NumberFieldName, numberFields } from "./detail-fields.ts";
import type { Details } from "./details.ts";
import { Refusal } from "./refusal.ts";
import { typedDecimal } from "./typed-reading.ts";

type Fields = Readonly<Record<string, string>>;

/** What the form of a method states about its weighing. Throws Refusal with the field and what would be right. */
export function typedDetails(
  fields: Fields,
  method: MethodName,
  names: Record<DetailField, string>,
  ownMark?: DecimalMark,
): Details {
  const own = new Set<string>(groupsOf(method).flatMap(({ fields: all }) => [...all]));
  const has = (name: DetailField) => own.has(name) && (fields[name] ?? "").trim() !== "";
  const number = (name: NumberFieldName) => numberOf(name, fields, names[name], ownMark);
  const optional = (name: NumberFieldName) => (has(name) ? number(name) : undefined);
  const words = (name: DetailField, example: string) => {
    const text = (fields[name] ?? "").trim();
    if (text === "") throw new Refusal(`${names[name]} is empty. Right: ${example}.`, name);
    return text;
  };
  const shown = (name: NumberFieldName) => ({ text: number(name), unit: "g" });
  const wire = optional("wire");
  const hangs = has("hanger-in-liquid") || has("hanger-in-air");
  const airStated = has("air-temperature") || has("air-pressure") || has("air-humidity");
  const pieces = has("odd-density") ? number("pieces") : optional("pieces");
  if (pieces !== undefined && !/^\d+$/.test(pieces))
    throw new Refusal(`${names.pieces} ${pieces} is no whole number. Right: a count such as 5.`, "pieces");
  return present({
    pieces: pieces === undefined ? undefined : Number(pieces),
    odd_g_cm3: pieces === undefined ? undefined : optional("odd-density"),
    added: has("added-mass")
      ? [
          {
            name: words("added-name", "a short name such as stone"),
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
        : present({
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
        ? present({ dry_g: optional("step-dry"), wet_g: optional("step-wet") })
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
  const named = present({
    name: words("liquid-name", "a short name such as ethanol"),
    lot: has("liquid-lot") ? words("liquid-lot", "the number on the bottle") : undefined,
    expansion_per_c: optional("liquid-expansion"),
  });
  if (kind === "stated")
    return {
      kind,
      ...named,
      density_g_cm3: number("liquid-density"),
      u_g_cm3: number("liquid-density-u"),
      ...present({ stated_at_c: optional("liquid-stated-at") }),
    };
  const volume = { volume_cm3: number("body-volume"), u_volume_cm3: number("body-volume-u") };
  const weighed = has("body-rise")
    ? { rise: shown("body-rise") }
    : { dry: shown("body-dry"), immersed: shown("body-immersed") };
  return { kind, ...named, ...volume, weighed };
}

function numberOf(name: NumberFieldName, fields: Fields, what: string, mark: DecimalMark = "."): string {
  const { from, to, unit } = numberFields[name];
  try {
    return typedDecimal(fields[name] ?? "", { from, to, unit, mark }, name);
  } catch (error) {
    if (!(error instanceof Refused)) throw error;
    throw new Refused("form.entry", { what, says: { code: error.code, params: error.params } }, name);
  }
}
