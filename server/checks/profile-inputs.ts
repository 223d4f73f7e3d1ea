import type { BalanceProfile } from "./balance-profile.ts";

/** The `balance` part of a compute request, in the keys of its contract. */
export interface BalanceAsked {
  readability_g: number;
  repeatability_g: number;
  repeatability_dof?: number;
  immersed_repeatability_g: number;
  immersed_repeatability_dof?: number;
  linearity_g: number;
}

/** What `underhook compute` is told of the balance. Degrees of freedom are left out where they are infinite. */
export function balanceAsked(profile: BalanceProfile): BalanceAsked {
  const { readabilityGrams, repeatability, immersedRepeatability, linearity } = profile;
  return {
    readability_g: readabilityGrams,
    repeatability_g: repeatability.value,
    ...(repeatability.dof === null ? {} : { repeatability_dof: repeatability.dof }),
    immersed_repeatability_g: immersedRepeatability.value,
    ...(immersedRepeatability.dof === null ? {} : { immersed_repeatability_dof: immersedRepeatability.dof }),
    linearity_g: linearity.value,
  };
}

/** The temperature part: what the thermometer showed, corrected, with its standard uncertainty, °C. */
export function temperatureAsked(
  { thermometer }: BalanceProfile,
  shownCelsius: number,
): { temperature_c: number; temperature_u_c: number; temperature_dof?: number } | undefined {
  if (thermometer === undefined) return undefined;
  const { value, dof } = thermometer.uCelsius;
  return {
    temperature_c: shownCelsius + thermometer.correctionCelsius,
    temperature_u_c: value,
    ...(dof === null ? {} : { temperature_dof: dof }),
  };
}
