import type { Line, ReportReading } from "./report.ts";
import type { Result, Stated } from "./stated.ts";

type Shape = Record<string, unknown>;
const shape = (value: unknown): Shape =>
  typeof value === "object" && value !== null ? (value as Shape) : {};

const methods: Record<string, string> = {
  hung: "Hydrostatic weighing, hung: the piece is weighed dry in air, then hung from the balance under the liquid; the difference is the mass of the liquid displaced.",
  displaced:
    "Hydrostatic weighing, displaced: the piece is weighed dry in air, then hung from a stand into liquid standing on the balance; the rise is the mass of the liquid displaced.",
  flask:
    "Flask (pycnometer): the flask is weighed full of liquid, and with the piece and filled up; the difference gives the mass of the liquid displaced.",
};

/** The method in words; ρ = (R/D)(ρL − ρa) + ρa is the model of all three. */
export function methodOf({ request }: Result): string {
  const name = String(request.method ?? "");
  return `${methods[name] ?? `Method "${name}".`} Density = (R/D)·(ρL − ρa) + ρa, with R the dry reading, D the displaced mass, ρL the density of the liquid and ρa that of the air.`;
}

/** Temperature of the liquid, °C; null when it was not stated. */
export function liquidCelsius({ request }: Result): number | null {
  const celsius = shape(request.liquid).temperature_c;
  return typeof celsius === "number" ? celsius : null;
}

/** Conditions and equipment as they entered the computation. */
export function conditionsOf({ result, captures }: Stated): Line[] {
  const { request, response } = result;
  const liquid = shape(request.liquid);
  const air = shape(request.air);
  const balance = shape(request.balance);
  const hanger = shape(request.hanger);
  const lines: (Line | null)[] = [
    line(
      "Liquid",
      liquid.kind === "stated" || liquid.kind === "measured"
        ? liquid.name
        : `water, ${liquid.purity ?? "distilled"}`,
    ),
    line("Temperature of the liquid", liquid.temperature_c, "°C", liquid.temperature_u_c),
    line("Dissolved solids", liquid.dissolved_solids_mg_l, "mg/l"),
    line("Density of the liquid", response.liquid_density_g_cm3?.toFixed(6), "g/cm³"),
    line("Air temperature", air.temperature_c, "°C"),
    line("Air pressure", air.pressure_hpa, "hPa"),
    line("Relative humidity", air.humidity_pct, "%"),
    line("Altitude", air.altitude_m, "m"),
    line("Density of the air", response.air_density_kg_m3?.toFixed(4), "kg/m³"),
    line(
      "Balance",
      distinct(
        captures.map(({ entry }) =>
          entry.body.what.includes("temperature") ? undefined : shape(entry.body).balance,
        ),
      ),
    ),
    line("Readability", balance.readability_g, "g"),
    line("Repeatability, one reading", spread(balance.repeatability_g), "g"),
    line("Repeatability, immersed", spread(balance.immersed_repeatability_g), "g"),
    line("Thermometer", distinct(captures.map(({ entry }) => shape(entry.body).thermometer))),
    line("Hanger wire", hanger.wire_mm, "mm"),
    line("Bubble allowance", request.bubble_allowance_mg, "mg"),
    line("Pieces weighed together", request.pieces),
    ...addedBodies(request.added),
  ];
  return lines.filter((each) => each !== null);
}

/** Bodies of known mass and density that were taken out of both weighings. */
function addedBodies(added: unknown): (Line | null)[] {
  if (!Array.isArray(added)) return [];
  return added
    .map(shape)
    .map(({ name, mass_g, density_g_cm3 }) =>
      line("Known body taken out", `${name}, ${mass_g} g at ${density_g_cm3} g/cm³`),
    );
}

/** What was corrected for, as far as the computation tells. */
export function correctionsOf({ request }: Result): string[] {
  const liquid = shape(request.liquid);
  return [
    "buoyancy of the air on the piece and on the weights of the balance",
    liquid.kind === "stated" || liquid.kind === "measured"
      ? "density of the liquid as stated by its supplier or measured"
      : "density of water at its temperature (Tanaka et al. 2001), with dissolved air and solids",
    "expansion of the piece to 20 °C for the density at 20 °C",
    ...(request.method === "hung"
      ? ["immersion and meniscus of the hanger's wire, as an uncertainty about zero"]
      : []),
  ];
}

const captureWords: Record<string, string> = {
  dry: "dry",
  immersed: "immersed",
  rise: "rise",
  "flask-full": "flask, full",
  "flask-with-piece": "flask with piece, filled up",
  zero: "zero",
  "dry-after": "dry, afterwards",
  temperature: "temperature of the liquid",
  "air-temperature": "temperature of the air",
};

/** The readings in the order they were taken, voided ones too. Without captures, those of the request. */
export function readingsOf({ captures, result, entry }: Stated): ReportReading[] {
  if (captures.length === 0) return typedIn(result, entry.at);
  return captures.map(({ entry: { at, body }, voided }) => ({
    what: captureWords[body.what] ?? body.what,
    shown: "reading" in body ? `${body.reading.text} ${body.reading.unit}` : `${body.celsius} °C`,
    at,
    source: body.source,
    because:
      ("settled" in body ? body.settled?.because : undefined) ??
      (body.source === "typed" ? "typed by the operator" : ""),
    voided,
  }));
}

function typedIn({ request }: Result, at: string): ReportReading[] {
  const flask = shape(request.flask);
  const series: [string, unknown][] = [
    ["dry", request.dry],
    ["immersed", request.immersed],
    ["rise", request.rise],
    ["flask, full", flask.full],
    ["flask with piece, filled up", flask.with_piece],
  ];
  return series.flatMap(([what, given]) => {
    const { readings = [], unit = "g" } = shape(given) as { readings?: string[]; unit?: string };
    return readings.map((text) => ({
      what,
      shown: `${text} ${unit}`,
      at,
      source: "typed",
      because: "",
      voided: null,
    }));
  });
}

function distinct(values: unknown[]): string | undefined {
  const names = [...new Set(values.filter((value) => typeof value === "string"))];
  return names.length > 0 ? names.join("; ") : undefined;
}

function line(label: string, value: unknown, unit = "", u?: unknown): Line | null {
  if (value === undefined || value === null || value === "") return null;
  const uncertainty = typeof u === "number" && u > 0 ? `, standard uncertainty ${figure(u, 2)} ${unit}` : "";
  const shown = typeof value === "number" ? figure(value, 6) : value;
  return { label, value: `${shown}${unit === "" ? "" : ` ${unit}`}${uncertainty}` };
}

/** A standard deviation to two significant digits (JCGM 100:2008, 7.2.6). */
function spread(value: unknown): unknown {
  return typeof value === "number" ? figure(value, 2) : value;
}

/** A number to so many significant digits, without trailing zeros. */
function figure(value: number, digits: number): string {
  return `${Number(value.toPrecision(digits))}`;
}
