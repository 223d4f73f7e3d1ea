import type { VirtualBalance } from "./balance.ts";
import type { Chance } from "./chance.ts";
import { airFreeWater, saturationLoss, solidsGain } from "./water.ts";
import type { Bench, Room } from "./world.ts";

/** What stands in the beaker, and what its owner says of it. */
export interface Poured {
  /** as it truly is, kg/m³ */
  densityAt(celsius: number): number;
  /** N/m */
  surfaceTension: number;
  /** `liquid` of a request; the balance and the true density serve those who measure it */
  stated(balance: VirtualBalance): Record<string, unknown>;
}

export type Pour = (bench: Bench, room: Room, chance: Chance) => Poured;

/** Surface tension of water near 20 °C, N/m: IAPWS R1-76, table value at 20 °C 72.74 mN/m. */
const waterTension = 0.07274;
/** With a wetting agent (common practice: 25 to 40 mN/m). */
const wettedTension = 0.03;
/** How far the composition of dissolved solids may change what they weigh, relative half-width. */
const solidsComposition = 0.15;

const thermometer = (bench: Bench, room: Room, chance: Chance) => ({
  temperature_c: room.celsius + chance.normal("thermometer", 0, bench.thermometerCelsius),
  temperature_u_c: bench.thermometerCelsius,
});

/** Water with the solids the bench states. */
export const water: Pour = (bench, room, chance) => {
  const solids =
    bench.solidsMgPerL * (1 + chance.between("composition", -solidsComposition, solidsComposition));
  const isotopes = chance.normal("isotopes", 0, bench.waterKgPerM3);
  const saturated = chance.share("dissolved air");
  const read = thermometer(bench, room, chance);
  return {
    densityAt: (celsius) =>
      airFreeWater(celsius) + isotopes - saturationLoss(celsius) * saturated + solidsGain(solids),
    surfaceTension: waterTension,
    stated: () => ({
      kind: "water",
      ...read,
      purity: "distilled",
      dissolved_solids_mg_l: bench.solidsMgPerL,
    }),
  };
};

/** Water with a drop of wetting agent, which adds up to 0.05 kg/m³ (common practice). */
export const wettedWater: Pour = (bench, room, chance) => {
  const plain = water(bench, room, chance);
  const agent = chance.between("agent", 0, 0.05);
  return {
    densityAt: (celsius) => plain.densityAt(celsius) + agent,
    surfaceTension: wettedTension,
    stated: (balance) => ({ ...plain.stated(balance), wetting_agent: true }),
  };
};

/** Tap water whose solids nobody measured: anything up to 600 mg/L (common practice). */
export const tapWater: Pour = (bench, room, chance) => {
  const solids = chance.between("solids", 0, 600);
  const plain = water({ ...bench, solidsMgPerL: 0 }, room, chance);
  return {
    ...plain,
    densityAt: (celsius) => plain.densityAt(celsius) + solidsGain(solids),
    stated: (balance) => {
      const { dissolved_solids_mg_l: _, ...stated } = plain.stated(balance);
      return { ...stated, purity: "tap" };
    },
  };
};

/** Another liquid: density at 20 °C and what is known of it, kg/m³, cubic expansion per °C. */
function other(name: string, kgPerM3: number, u: number, expansion: number, tension: number): Pour {
  return (bench, room, chance) => {
    const true20 = kgPerM3 + chance.normal("liquid", 0, u);
    return {
      densityAt: (celsius) => true20 * (1 - expansion * (celsius - 20)),
      surfaceTension: tension,
      stated: () => ({
        kind: "stated",
        name,
        density_g_cm3: kgPerM3 / 1000,
        u_g_cm3: u / 1000,
        ...thermometer(bench, room, chance),
        stated_at_c: 20,
        expansion_per_c: expansion,
      }),
    };
  };
}

/** Ethanol: 0.7893 g/cm³ at 20 °C, 1.08e-3 per °C, 22 mN/m (handbook values from memory). */
export const ethanol = other("ethanol", 789.3, 0.3, 1.08e-3, 0.022);
/** A fluorinated liquid about twice as dense as water (invented lot). */
export const fluorinated = other("fluorinated liquid", 1780, 0.5, 1.3e-3, 0.015);

/** Salt water of an unknown strength whose density the owner finds with a glass body of known volume, dry and hung. */
export const measuredBrine: Pour = (bench, room, chance) => {
  const kgPerM3 = 1000 + chance.between("brine", 5, 60);
  const bodyM3 = 10e-6;
  const statedCm3 = bodyM3 * 1e6 + chance.normal("volume of the body", 0, 0.0002);
  const bodyKg = bodyM3 * 2500;
  const { gravity, trueAir } = room;
  return {
    densityAt: () => kgPerM3,
    surfaceTension: waterTension,
    stated: (balance) => ({
      kind: "measured",
      name: "brine",
      body: {
        volume_cm3: statedCm3,
        u_volume_cm3: 0.0002,
        dry: {
          readings: [
            balance.shows((bodyKg - bodyM3 * trueAir) * gravity, "body dry", 0, bench.dryScatterGrams),
          ],
        },
        immersed: {
          readings: [
            balance.shows((bodyKg - bodyM3 * kgPerM3) * gravity, "body immersed", 0, bench.wetScatterGrams),
          ],
        },
      },
      ...thermometer(bench, room, chance),
    }),
  };
};
