import type { BalanceProfile } from "./balance-profile.ts";
import type { Dof } from "./check.ts";
import type { Origin, ProfileNumber } from "./current-number.ts";

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

/** One number of the profile as an input of a budget: standard uncertainty, degrees of freedom (null: infinite), origin. */
export interface ProfileInput {
  name: "repeatability" | "immersed repeatability" | "linearity" | "resolution" | "thermometer";
  unit: "g" | "°C";
  u: number;
  dof: Dof;
  origin: Origin;
}

/** Every number of the profile as a standard uncertainty with its degrees of freedom, for budgets and their pages. */
export function profileInputs(profile: BalanceProfile): ProfileInput[] {
  const scatter = (name: ProfileInput["name"], { value, dof, origin }: ProfileNumber): ProfileInput => ({
    name,
    unit: "g",
    u: value,
    dof,
    origin,
  });
  const { linearity, thermometer, readabilityGrams } = profile;
  return [
    scatter("repeatability", profile.repeatability),
    scatter("immersed repeatability", profile.immersedRepeatability),
    scatter("linearity", { ...linearity, value: linearity.value / Math.sqrt(3) }),
    {
      name: "resolution",
      unit: "g",
      u: readabilityGrams / Math.sqrt(12),
      dof: null,
      origin: { assumed: "rectangular, half a last place to either side, at zero and at load" },
    },
    ...(thermometer === undefined
      ? []
      : [
          {
            name: "thermometer" as const,
            unit: "°C" as const,
            u: thermometer.uCelsius.value,
            dof: thermometer.uCelsius.dof,
            origin: thermometer.uCelsius.origin,
          },
        ]),
  ];
}
