import type { BalanceProfile } from "./balance-profile.ts";
import { correctionAt, type TemperatureCorrection } from "./thermometer-points.ts";

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

interface LiquidTemperatureAsked {
  temperature_c: number;
  temperature_correction_c: number;
  temperature_u_c: number;
  temperature_dof?: number;
}

/** The temperature part: what the thermometer showed, corrected, with its standard uncertainty, °C. */
export function temperatureAsked(
  { thermometer }: BalanceProfile,
  shownCelsius: number,
): LiquidTemperatureAsked | undefined {
  const found = thermometer && correctionAt(thermometer, shownCelsius);
  return found && correctedAsked(shownCelsius + found.correctionCelsius, found);
}

/** The same of a temperature that is corrected already. */
export function correctedAsked(
  celsius: number,
  { correctionCelsius, uCelsius, dof }: TemperatureCorrection,
): LiquidTemperatureAsked {
  return {
    temperature_c: celsius,
    temperature_correction_c: correctionCelsius,
    temperature_u_c: uCelsius,
    ...(dof === null ? {} : { temperature_dof: dof }),
  };
}
