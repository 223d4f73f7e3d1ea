import type { Ambient } from "../../calibration/ambient.ts";
import type { BalanceTraits } from "../../calibration/balance.ts";
import type { Liquid, MeasuredLiquid } from "../../calibration/liquid.ts";
import type { Measurement } from "../../calibration/measurement.ts";
import { type Method, methods } from "../methods/index.ts";
import { balance, balanceOf } from "./balance.ts";
import type { ComputeRequest } from "./contract.ts";
import { omitUndefined } from "./omit-undefined.ts";
import { seriesOf } from "./series.ts";

type GivenLiquid = NonNullable<ComputeRequest["liquid"]>;
type MeasuredBody = Extract<GivenLiquid, { kind: "measured" }>["body"];

function temperature(from: {
  temperature_c?: number | undefined;
  temperature_u_c: number;
  temperature_dof?: number | undefined;
  temperature_correction_c?: number | undefined;
}) {
  const { temperature_c: celsius, temperature_u_c: uCelsius, temperature_dof: dof } = from;
  const correctionCelsius = from.temperature_correction_c;
  return celsius === undefined ? undefined : omitUndefined({ celsius, uCelsius, dof, correctionCelsius });
}

function body({ volume_cm3, u_volume_cm3, dry, immersed, rise }: MeasuredBody): MeasuredLiquid["body"] {
  const volume = { cm3: volume_cm3, uCm3: u_volume_cm3 };
  if (rise) return { ...volume, rise: seriesOf(rise, "wet") };
  // the contract lets no body through without either a rise or both readings
  return { ...volume, dry: seriesOf(dry!), immersed: seriesOf(immersed!) };
}

function liquid(from: GivenLiquid): Liquid {
  if (from.kind === "water")
    return omitUndefined({
      kind: "water" as const,
      temperature: omitUndefined({
        celsius: from.temperature_c,
        uCelsius: from.temperature_u_c,
        dof: from.temperature_dof,
        correctionCelsius: from.temperature_correction_c,
        gradientCelsius: from.gradient_c,
      }),
      purity: from.purity,
      dissolvedSolidsMgPerL: from.dissolved_solids_mg_l,
      dissolvedAir: from.dissolved_air,
      wettingAgent: from.wetting_agent,
      formulaUKgPerM3: from.formula_u_kg_m3,
    });
  if (from.kind === "measured")
    return omitUndefined({
      kind: "measured" as const,
      name: from.name,
      body: body(from.body),
      temperature: temperature(from),
      expansionPerCelsius: from.expansion_per_c,
    });
  return omitUndefined({
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
  return omitUndefined({
    kind: "measured" as const,
    celsius: from.temperature_c,
    hectopascals: from.pressure_hpa,
    percentHumidity: from.humidity_pct,
    uCelsius: from.temperature_u_c,
    uHectopascals: from.pressure_u_hpa,
    uPercentHumidity: from.humidity_u_pct,
  });
}

/** The contract lets no request through whose method needs a liquid and has none. */
function liquidFor({ pieceTemperature }: Method, request: ComputeRequest): Liquid {
  return pieceTemperature
    ? { kind: "none", temperature: pieceTemperature(request) }
    : liquid(request.liquid!);
}

/** The balance that a request names beside its readings in the liquid. */
function secondBalance({ loads }: Method, request: ComputeRequest): BalanceTraits | undefined {
  const given = Object(Reflect.get(request, loads.at(-1)?.key[0] ?? "dry"));
  const read = balance.safeParse(Reflect.get(given, "balance"));
  return read.success ? balanceOf(read.data) : undefined;
}

/**
 * The measurement a request describes. `linearExpansionPerCelsius`: of the claimed metal, where there is a claim and
 * its expansion is known.
 */
export function measurementOf(
  request: ComputeRequest,
  linearExpansionPerCelsius: number | undefined,
): Measurement {
  const { hanger } = request;
  const method = methods[request.method];
  return omitUndefined({
    dry: seriesOf(request.dry),
    weighing: method.weighing(request),
    liquid: liquidFor(method, request),
    air: air(request.air),
    balance: balanceOf(request.balance),
    immersedBalance: secondBalance(method, request),
    hanger: omitUndefined({
      wireMillimetres: hanger?.wire_mm ?? 0,
      meniscusChange: hanger?.meniscus_change,
      depthMillimetres: hanger?.depth_mm,
      inLiquid: hanger?.in_liquid && seriesOf(hanger.in_liquid),
      inAir: hanger?.in_air && seriesOf(hanger.in_air),
    }),
    bubbleAllowanceMg: request.bubble_allowance_mg ?? 0,
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
