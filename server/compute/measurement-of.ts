import type { Ambient } from "../../calibration/ambient.ts";
import type { Liquid, MeasuredLiquid } from "../../calibration/liquid.ts";
import type { Measurement, Weighing } from "../../calibration/measurement.ts";
import type { Lifted, Series } from "../../calibration/series.ts";
import type { MassUnit } from "../../calibration/units.ts";
import type { ComputeRequest } from "./contract.ts";
import { present } from "./present.ts";

type MeasuredBody = Extract<ComputeRequest["liquid"], { kind: "measured" }>["body"];
type GivenSeries = ComputeRequest["dry"];

/** `lifted`: what lifting the piece does to the zero where the request does not say. */
function series(given: GivenSeries, lifted: Lifted = "kept"): Series {
  const unit = given.unit as MassUnit;
  if (given.timed) {
    const timed = given.timed.map((look) => {
      const { at_s: atSeconds } = look;
      return "zero" in look ? { atSeconds, zero: look.zero } : { atSeconds, reading: look.reading };
    });
    return { timed, lifted: given.lifted ?? lifted, unit };
  }
  return present({
    readings: given.readings ?? [],
    unit,
    zeroBefore: given.zero_before,
    zeroAfter: given.zero_after,
  });
}

function weighing(request: ComputeRequest): Weighing {
  if (request.method === "hung") return { method: "hung", immersed: series(request.immersed) };
  if (request.method === "displaced") return { method: "displaced", rise: series(request.rise, "wet") };
  const { full, with_piece, liquid_g, warmer_c, warmer_u_c } = request.flask;
  return present({
    method: "flask" as const,
    full: series(full),
    withPiece: series(with_piece),
    liquidGrams: liquid_g,
    warmerCelsius: warmer_c,
    uWarmerCelsius: warmer_u_c,
  });
}

function temperature(from: {
  temperature_c?: number | undefined;
  temperature_u_c: number;
  temperature_dof?: number | undefined;
}) {
  const { temperature_c: celsius, temperature_u_c: uCelsius, temperature_dof: dof } = from;
  return celsius === undefined ? undefined : present({ celsius, uCelsius, dof });
}

function body({ volume_cm3, u_volume_cm3, dry, immersed, rise }: MeasuredBody): MeasuredLiquid["body"] {
  const volume = { cm3: volume_cm3, uCm3: u_volume_cm3 };
  if (rise) return { ...volume, rise: series(rise, "wet") };
  // the contract lets no body through without either a rise or both readings
  return { ...volume, dry: series(dry!), immersed: series(immersed!) };
}

function liquid(from: ComputeRequest["liquid"]): Liquid {
  if (from.kind === "water")
    return present({
      kind: "water" as const,
      temperature: present({
        celsius: from.temperature_c,
        uCelsius: from.temperature_u_c,
        dof: from.temperature_dof,
        gradientCelsius: from.gradient_c,
      }),
      purity: from.purity,
      dissolvedSolidsMgPerL: from.dissolved_solids_mg_l,
      dissolvedAir: from.dissolved_air,
      wettingAgent: from.wetting_agent,
      formulaUKgPerM3: from.formula_u_kg_m3,
    });
  if (from.kind === "measured")
    return present({
      kind: "measured" as const,
      name: from.name,
      body: body(from.body),
      temperature: temperature(from),
      expansionPerCelsius: from.expansion_per_c,
    });
  return present({
    kind: "stated" as const,
    name: from.name,
    gPerCm3: from.density_g_cm3,
    uGPerCm3: from.u_g_cm3,
    temperature: temperature(from),
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
      repeatabilityDof: balance.repeatability_dof,
      immersedReadabilityGrams: balance.immersed_readability_g,
      immersedRepeatabilityGrams: balance.immersed_repeatability_g,
      immersedRepeatabilityDof: balance.immersed_repeatability_dof,
      linearityGrams: balance.linearity_g,
      spanU: balance.span_u_relative,
    }),
    hanger: present({
      wireMillimetres: hanger.wire_mm,
      meniscusChange: hanger.meniscus_change,
      depthMillimetres: hanger.depth_mm,
      inLiquid: hanger.in_liquid && series(hanger.in_liquid),
      inAir: hanger.in_air && series(hanger.in_air),
    }),
    bubbleAllowanceMg: request.bubble_allowance_mg,
    pieces: request.pieces,
    oddGPerCm3: request.odd_density_g_cm3,
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
