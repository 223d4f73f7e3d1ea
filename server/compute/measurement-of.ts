import type { Ambient } from "../../calibration/ambient.ts";
import type { Series } from "../../calibration/balance.ts";
import type { Liquid } from "../../calibration/liquid.ts";
import type { Measurement, Weighing } from "../../calibration/measurement.ts";
import type { MassUnit } from "../../calibration/units.ts";
import type { ComputeRequest } from "./contract.ts";

type Present<T> = { [K in keyof T as undefined extends T[K] ? never : K]: T[K] } & {
  [K in keyof T as undefined extends T[K] ? K : never]?: Exclude<T[K], undefined>;
};

/** Drops the keys that are undefined: an absent key and an undefined one mean the same in JSON. */
function present<T extends object>(value: T): Present<T> {
  return Object.fromEntries(Object.entries(value).filter(([, v]) => v !== undefined)) as Present<T>;
}

function series({ readings, unit, zero_before, zero_after }: ComputeRequest["dry"]): Series {
  return { readings, unit: unit as MassUnit, ...present({ zeroBefore: zero_before, zeroAfter: zero_after }) };
}

function weighing(request: ComputeRequest): Weighing {
  if (request.method === "hung") return { method: "hung", immersed: series(request.immersed) };
  if (request.method === "displaced") return { method: "displaced", rise: series(request.rise) };
  return { method: "flask", full: series(request.flask.full), withPiece: series(request.flask.with_piece) };
}

function liquid(from: ComputeRequest["liquid"]): Liquid {
  if (from.kind === "water")
    return present({
      kind: "water" as const,
      temperature: {
        celsius: from.temperature_c,
        uCelsius: from.temperature_u_c,
        gradientCelsius: from.gradient_c,
      },
      purity: from.purity,
      dissolvedSolidsMgPerL: from.dissolved_solids_mg_l,
      dissolvedAir: from.dissolved_air,
      wettingAgent: from.wetting_agent,
      formulaUKgPerM3: from.formula_u_kg_m3,
    });
  const temperature =
    from.temperature_c === undefined
      ? undefined
      : { celsius: from.temperature_c, uCelsius: from.temperature_u_c };
  return present({
    kind: "stated" as const,
    name: from.name,
    gPerCm3: from.density_g_cm3,
    uGPerCm3: from.u_g_cm3,
    temperature,
    statedAtCelsius: from.stated_at_c,
    expansionPerCelsius: from.expansion_per_c,
  });
}

function air(from: ComputeRequest["air"]): Ambient {
  if ("altitude_m" in from) return { kind: "altitude", metres: from.altitude_m };
  if ("density_kg_m3" in from) return { kind: "stated", kgPerM3: from.density_kg_m3, uKgPerM3: from.u_kg_m3 };
  return present({
    kind: "measured" as const,
    celsius: from.temperature_c,
    hectopascals: from.pressure_hpa,
    percentHumidity: from.humidity_pct,
    uCelsius: from.temperature_u_c,
    uHectopascals: from.pressure_u_hpa,
    uPercentHumidity: from.humidity_u_pct,
  });
}

/**
 * The measurement a request describes. `linearExpansionPerCelsius`: of the claimed metal, where there is a claim and
 * its expansion is known.
 */
export function measurementOf(
  request: ComputeRequest,
  linearExpansionPerCelsius: number | undefined,
): Measurement {
  const { balance, hanger } = request;
  return present({
    dry: series(request.dry),
    weighing: weighing(request),
    liquid: liquid(request.liquid),
    air: air(request.air),
    balance: present({
      readabilityGrams: balance.readability_g,
      repeatabilityGrams: balance.repeatability_g,
      immersedReadabilityGrams: balance.immersed_readability_g,
      immersedRepeatabilityGrams: balance.immersed_repeatability_g,
      linearityGrams: balance.linearity_g,
      spanU: balance.span_u_relative,
    }),
    hanger: present({
      wireMillimetres: hanger.wire_mm,
      meniscusChange: hanger.meniscus_change,
      depthMillimetres: hanger.depth_mm,
    }),
    bubbleAllowanceMg: request.bubble_allowance_mg,
    pieces: request.pieces,
    added: request.added?.map((body) => ({
      name: body.name,
      massGrams: body.mass_g,
      uMassGrams: body.u_mass_g,
      gPerCm3: body.density_g_cm3,
      uGPerCm3: body.u_density_g_cm3,
    })),
    paired: request.paired,
    linearExpansionPerCelsius,
    confidence: request.confidence,
  });
}
