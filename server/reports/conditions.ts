import { isCode } from "../../views/messages/catalogue.ts";
import { tellId, tellValue } from "../../views/messages/tell.ts";
import type { Line, ReportReading } from "../../views/reports/report.ts";
import { methodNamed, readingsIn, statedIn } from "../methods/index.ts";
import { waysTaken } from "../weighing/item.ts";
import { celsiusText } from "./results.ts";
import type { Result, Stated } from "./stated.ts";
import type { Writing } from "./writing.ts";

type Shape = Record<string, unknown>;
const shape = (value: unknown): Shape =>
  typeof value === "object" && value !== null ? (value as Shape) : {};

/** The method in words, with its model; ρ = (R/D)(ρL − ρa) + ρa unless it has words for its own. */
export function methodOf({ request }: Result, { t }: Writing): string {
  const name = String(request.method ?? "");
  const own = `method.${name}.report`;
  const model = `method.${name}.model`;
  return `${isCode(own) ? t(own) : t("report.other-method", { name })} ${t(isCode(model) ? model : "report.model")}`;
}

/** Temperature of the liquid, °C; null when it was not stated. */
export function liquidCelsius({ request }: Result): number | null {
  const celsius = shape(request.liquid).temperature_c;
  return typeof celsius === "number" ? celsius : null;
}

/** Conditions and equipment as they entered the computation. */
export function conditionsOf(
  { result, statement, captures }: Pick<Stated, "result" | "statement" | "captures">,
  writing: Writing,
): Line[] {
  const { request } = result;
  const { locale, t, number } = writing;
  const liquid = shape(request.liquid);
  const air = shape(request.air);
  const balance = shape(request.balance);
  const hanger = shape(request.hanger);
  const line = lineIn(writing);
  const fixed = (value: number | null | undefined, decimals: number) =>
    value === undefined || value === null ? undefined : number(value.toFixed(decimals));
  const lines: (Line | null)[] = [
    line(
      t("report.conditions.liquid"),
      request.liquid === undefined
        ? undefined
        : isNamed(liquid)
          ? liquid.name
          : t("report.conditions.water", {
              purity: tellId("settings.waters", String(liquid.purity ?? "distilled"), locale),
            }),
    ),
    ...statedIn(request).map(({ label, value }) => ({
      label: t(label.code, label.params),
      value: t(value.code, value.params),
    })),
    line(
      t("report.conditions.liquid-temperature"),
      typeof liquid.temperature_c === "number"
        ? Number(celsiusText(statement, liquid.temperature_c))
        : undefined,
      "°C",
      liquid.temperature_u_c,
    ),
    correctionLine({ result, statement, captures }, writing),
    line(t("report.conditions.solids"), liquid.dissolved_solids_mg_l, "mg/l"),
    line(t("report.conditions.liquid-density"), fixed(statement.liquid_density_g_cm3, 6), "g/cm³"),
    line(t("report.conditions.air-temperature"), air.temperature_c, "°C"),
    line(t("report.conditions.air-pressure"), air.pressure_hpa, "hPa"),
    line(t("report.conditions.humidity"), air.humidity_pct, "%"),
    line(t("report.conditions.altitude"), air.altitude_m, "m"),
    line(t("report.conditions.air-density"), fixed(statement.air_density_kg_m3, 4), "kg/m³"),
    line(
      t("report.conditions.balance"),
      distinct(
        captures.map(({ entry }) =>
          entry.body.what.includes("temperature") ? undefined : shape(entry.body).balance,
        ),
        writing.balance,
      ),
    ),
    line(t("report.conditions.readability"), balance.readability_g, "g"),
    line(t("report.conditions.repeatability"), spread(balance.repeatability_g), "g"),
    line(
      t("report.conditions.immersed-repeatability"),
      request.liquid === undefined ? undefined : spread(balance.immersed_repeatability_g),
      "g",
    ),
    line(
      t("report.conditions.thermometer"),
      request.liquid === undefined
        ? undefined
        : (distinct(
            captures.map(({ entry }) => shape(entry.body).thermometer),
            (own) => own,
          ) ?? t("report.not-stated")),
    ),
    line(t("report.conditions.wire"), hanger.wire_mm, "mm"),
    line(t("report.conditions.bubbles"), request.bubble_allowance_mg, "mg"),
    line(t("report.conditions.pieces"), request.pieces),
    ...addedBodies(request.added, writing),
  ];
  return lines.filter((each) => each !== null);
}

/** What the check of the thermometer added to what it showed, with its value. */
function correctionLine(
  { result, captures }: Pick<Stated, "result" | "statement" | "captures">,
  { t, number }: Writing,
): Line | null {
  const used = liquidCelsius(result);
  const shown = captures.flatMap(({ entry: { body }, voided }) =>
    voided === null && body.what === "temperature" ? [Number(body.celsius)] : [],
  );
  const [last] = shown.slice(-1);
  if (used === null || last === undefined || shown.length > 1) return null;
  const added = Number((used - last).toFixed(3));
  if (added === 0) return null;
  const value = `${added > 0 ? "+" : "−"}${number(`${Math.abs(added)}`)}`;
  return { label: t("report.conditions.correction"), value: t("report.conditions.correction-is", { value }) };
}

/** A liquid other than the bench's water has the name its owner gave it. */
const isNamed = ({ kind }: Shape) => kind === "stated" || kind === "measured";

/** Bodies of known mass and density that were taken out of both weighings. */
function addedBodies(added: unknown, { t, number }: Writing): Line[] {
  if (!Array.isArray(added)) return [];
  return added.map(shape).map(({ name, mass_g, density_g_cm3 }) => ({
    label: t("report.conditions.body"),
    value: t("report.conditions.body-is", {
      name: String(name),
      mass: number(String(mass_g)),
      density: number(String(density_g_cm3)),
    }),
  }));
}

/** What was corrected for, as far as the computation tells. */
export function correctionsOf({ request }: Result, { t }: Writing): string[] {
  return [
    t("report.corrections.air"),
    ...(request.liquid === undefined
      ? []
      : [isNamed(shape(request.liquid)) ? t("report.corrections.liquid") : t("report.corrections.water")]),
    t("report.corrections.expansion"),
    ...(methodNamed(request)?.corrections ?? []).map((code) => t(code)),
  ];
}

/** The readings in the order they were taken, voided ones too. Without captures, those of the request. */
export function readingsOf(
  { captures, result, entry, secondReadings }: Stated,
  writing: Writing,
): ReportReading[] {
  if (captures.length === 0) return typedIn(result, entry.at, writing);
  const { t, number, tell, locale, when } = writing;
  const confirmed = (id: string) => {
    const one = secondReadings.findLast(({ body }) => body.agrees && body.of.includes(id));
    return one ? [t("report.readings.confirmed", { by: one.body.by, at: when(one.at) })] : [];
  };
  return captures.map(({ entry: { id, at, body }, voided }) => {
    const settled = "settled" in body ? body.settled : undefined;
    return {
      what: tellId("report.readings.roles", body.what, locale),
      shown:
        "reading" in body
          ? `${number(body.reading.text)} ${body.reading.unit}`
          : `${number(body.celsius)} °C`,
      at: when(at),
      source: tellId("report.readings.sources", body.source, locale),
      because: [
        waysTaken.some((way) => way === settled?.by)
          ? tellId("report.readings.because", String(settled?.by), locale)
          : settled?.because !== undefined
            ? tell(settled.because)
            : body.source === "typed"
              ? t("report.readings.typed")
              : "",
        ...confirmed(id),
      ].join(", "),
      voided: voided === null ? null : tellValue(voided, locale),
    };
  });
}

function typedIn({ request }: Result, at: string, { t, number, locale, when }: Writing): ReportReading[] {
  return readingsIn(request).flatMap(({ role, readings, unit }) =>
    readings.map((text) => ({
      what: tellId("report.readings.roles", role, locale),
      shown: `${number(text)} ${unit}`,
      at: when(at),
      source: t("report.readings.sources.typed"),
      because: "",
      voided: null,
    })),
  );
}

function distinct(values: unknown[], named: (name: string) => string): string | undefined {
  const names = [...new Set(values.filter((value) => typeof value === "string"))];
  return names.length > 0 ? names.map(named).join("; ") : undefined;
}

/** Lines of a language: a value that was not stated makes none. */
function lineIn({ t, number }: Writing) {
  return (label: string, value: unknown, unit = "", u?: unknown): Line | null => {
    if (value === undefined || value === null || value === "") return null;
    const withUnit = (text: string) => `${text}${unit === "" ? "" : ` ${unit}`}`;
    const shown = withUnit(typeof value === "number" ? number(figure(value, 6)) : String(value));
    const uncertain = typeof u === "number" && u > 0;
    return {
      label,
      value: uncertain
        ? t("report.conditions.with-u", { value: shown, u: withUnit(number(figure(u, 2))) })
        : shown,
    };
  };
}

/** A standard deviation to two significant digits (JCGM 100:2008, 7.2.6). */
function spread(value: unknown): unknown {
  return typeof value === "number" ? Number(figure(value, 2)) : value;
}

/** A number to so many significant digits, without trailing zeros. */
function figure(value: number, digits: number): string {
  return `${Number(value.toPrecision(digits))}`;
}
