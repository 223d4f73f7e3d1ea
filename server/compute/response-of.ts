import type { DensityResult } from "../../calibration/density-result.ts";
import type { Decision } from "../conformity/decision-rule.ts";
import type { Finding } from "../conformity/finding.ts";
import { highOf, lowOf } from "../conformity/tolerance.ts";
import type { ComputeResponse, Conformity } from "./contract.ts";

/** A result and its finding as the contract writes them. */
export function responseOf(id: string, result: DensityResult, finding: Finding): ComputeResponse {
  return {
    id,
    density_g_cm3: result.gPerCm3,
    u_g_cm3: result.uGPerCm3,
    dof: Number.isFinite(result.dof) ? result.dof : null,
    k: result.k,
    expanded_g_cm3: result.expandedGPerCm3,
    interval_g_cm3: [...result.intervalGPerCm3],
    interval_from: result.intervalFrom,
    density_20_g_cm3: result.gPerCm3At20,
    relative_density: { d20_4: result.relativeDensity.d20over4, apparent: result.relativeDensity.apparent },
    mass_g: result.massGrams,
    u_mass_g: result.uMassGrams,
    volume_cm3: result.volumeCm3,
    u_volume_cm3: result.uVolumeCm3,
    liquid_density_g_cm3: result.liquidGPerCm3,
    air_density_kg_m3: result.airKgPerM3,
    budget: result.budget.map((row) => ({
      input: row.input,
      unit: row.unit,
      value: row.value,
      u: row.u,
      sensitivity: row.sensitivity,
      contribution_g_cm3: row.contributionGPerCm3,
      share: row.share,
    })),
    finding: {
      claim: finding.claim ?? null,
      state: finding.state,
      because: finding.because,
      ...(finding.conformity && { conformity: conformityOf(finding.conformity) }),
    },
    alive: [...finding.alive],
    warnings: [...result.warnings],
  };
}

function conformityOf({ rule, limits, acceptance, ...decision }: Decision): Conformity {
  return {
    rule: { ...rule },
    limits_g_cm3: [lowOf(limits), highOf(limits)],
    acceptance_g_cm3: acceptance === "empty" ? null : [lowOf(acceptance), highOf(acceptance)],
    verdict: decision.verdict,
    conformance_probability: decision.conformanceProbability,
    specific_risk: decision.specificRisk,
    worst_acceptance_risk: decision.worstAcceptanceRisk,
    says: decision.says,
  };
}
