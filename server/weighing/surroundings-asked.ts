import type { BalanceProfile } from "../checks/balance-profile.ts";
import { correctedAsked, temperatureAsked } from "../checks/profile-inputs.ts";
import type { Conditions } from "./conditions.ts";
import type { Details } from "./details.ts";
import type { Item } from "./item.ts";
import { type LiquidTemperature, sensedAir } from "./sensed.ts";

const sqrt3 = Math.sqrt(3);

/**
 * Temperature of the liquid: of a sensor, corrected by its own check or within its own half-width; typed, corrected by the thermometer's own check, or
 * within the half-width of the conditions.
 */
function temperatureFor(
  { celsius, halfWidth, from, checked: ofSensor }: LiquidTemperature,
  conditions: Conditions,
  profile: BalanceProfile | undefined,
) {
  if (ofSensor) return correctedAsked(celsius, ofSensor);
  const checked = from === "typed" && profile ? temperatureAsked(profile, celsius) : undefined;
  return (
    checked ?? {
      temperature_c: celsius,
      temperature_u_c: (halfWidth ?? Number(conditions.thermometerHalfWidthCelsius)) / sqrt3,
    }
  );
}

type Shown = { text: string; unit: string };
const once = ({ text, unit }: Shown) => ({ readings: [text], unit });

/** The liquid of a weighing in the form of a compute request: the bench's water, or what was stated for this one. */
export function liquidAsked(
  { details }: Pick<Item, "details">,
  shown: LiquidTemperature,
  conditions: Conditions,
  profile?: BalanceProfile,
) {
  const temperature = temperatureFor(shown, conditions, profile);
  const { liquid, wetting_agent } = details;
  const gradient_c = Math.max(Number(details.gradient_c ?? 0), shown.halfRange ?? 0);
  if (liquid === undefined)
    return {
      kind: "water" as const,
      ...temperature,
      ...(gradient_c === 0 ? {} : { gradient_c }),
      purity: conditions.purity,
      dissolved_solids_mg_l: Number(conditions.dissolvedSolidsMgPerL),
      ...(wetting_agent ? { wetting_agent } : {}),
    };
  const named = {
    name: liquid.lot === undefined ? liquid.name : `${liquid.name}, lot ${liquid.lot}`,
    ...temperature,
    ...(liquid.expansion_per_c === undefined ? {} : { expansion_per_c: Number(liquid.expansion_per_c) }),
  };
  if (liquid.kind === "stated")
    return {
      kind: "stated" as const,
      ...named,
      density_g_cm3: Number(liquid.density_g_cm3),
      u_g_cm3: Number(liquid.u_g_cm3),
      ...(liquid.stated_at_c === undefined ? {} : { stated_at_c: Number(liquid.stated_at_c) }),
    };
  const { weighed, volume_cm3, u_volume_cm3 } = liquid;
  return {
    kind: "measured" as const,
    ...named,
    body: {
      volume_cm3: Number(volume_cm3),
      u_volume_cm3: Number(u_volume_cm3),
      ...("rise" in weighed
        ? { rise: once(weighed.rise) }
        : { dry: once(weighed.dry), immersed: once(weighed.immersed) }),
    },
  };
}

/** The air: stated for this weighing, shown by sensors, or that of the bench's altitude. */
export function airAsked(item: Pick<Item, "details" | "captures">, conditions: Conditions) {
  const { air } = item.details;
  if (air === undefined) return sensedAir(item) ?? { altitude_m: Number(conditions.altitudeMetres) };
  return {
    temperature_c: Number(air.temperature_c),
    pressure_hpa: Number(air.pressure_hpa),
    humidity_pct: Number(air.humidity_pct),
  };
}

/** The hanger: zeroed at its depth, or weighed in where its own reading was stated. */
export function hangerAsked({ hanger = {} }: Details, conditions: Conditions) {
  const { wire_mm, in_liquid, in_air } = hanger;
  const wire = { wire_mm: Number(wire_mm ?? conditions.wireMillimetres) };
  if (in_liquid === undefined) return { ...wire, zeroed: "immersed" as const };
  return {
    ...wire,
    zeroed: "weighed" as const,
    in_liquid: once(in_liquid),
    ...(in_air === undefined ? {} : { in_air: once(in_air) }),
  };
}

/** Bodies of known mass and density weighed with the piece, and how many pieces there are. */
export function loadAsked({ added, pieces, odd_g_cm3 }: Details) {
  return {
    pieces: pieces ?? 1,
    ...(odd_g_cm3 === undefined ? {} : { odd_density_g_cm3: Number(odd_g_cm3) }),
    ...(added === undefined
      ? {}
      : {
          added: added.map((body) => ({
            name: body.name,
            mass_g: Number(body.mass_g),
            u_mass_g: Number(body.u_mass_g),
            density_g_cm3: Number(body.density_g_cm3),
            u_density_g_cm3: Number(body.u_density_g_cm3),
          })),
        }),
  };
}
