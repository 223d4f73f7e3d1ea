import { type Scale, scales } from "./benches.ts";
import type { ClassOf } from "./class-of.ts";
import { ethanol, fluorinated, measuredBrine, tapWater, wettedWater } from "./liquids.ts";
import type { Method, Piece } from "./weighing.ts";

const methods: readonly Method[] = ["hung", "displaced", "flask"];
const single = (method: Method, scale: Scale): ClassOf => ({
  name: `${method}, ${scale}`,
  scenario: { method, scale, repeats: 1 },
});
const repeated = (method: Method, scale: Scale, repeats: number): ClassOf => ({
  name: `${method}, ${scale}, ${repeats} repeats`,
  scenario: { method, scale, repeats },
});

/** Why a class covers more than it states. */
const because = (reason: string, one: ClassOf): ClassOf => ({ ...one, reason });
const fewOwnRepeats =
  "the scatter of four to six own readings in each of two loads, each by Student’s distribution, covers 97 to 98.5 % (Behrens and Fisher), and nothing else is known of it";
const moreThanStated =
  "two or three readings that scatter more than stated widen their mean (Birge’s ratio), those that scatter less do not narrow it";
const zeroBetween =
  "the zero moved between its two looks and nobody saw when, so any place between them is allowed for";

/** A stone in its setting, tenth of the whole mass; its owner knows its mass and kind. */
const stone = { share: 0.1, gPerCm3: 3.52, uGPerCm3: 0.01 };

function withStone(piece: Piece): Piece {
  const grams = piece.grams * stone.share;
  const cm3 = piece.grams / piece.gPerCm3 + grams / stone.gPerCm3;
  return { grams: piece.grams + grams, gPerCm3: (piece.grams + grams) / cm3 };
}

/** Classes in which everything stated is true. */
export const statedTruly: readonly ClassOf[] = [
  ...methods.flatMap((method) => scales.map((scale) => single(method, scale))),
  repeated("hung", "0.1 mg", 2),
  because(moreThanStated, repeated("hung", "0.1 mg", 3)),
  because(fewOwnRepeats, repeated("hung", "0.1 mg", 4)),
  repeated("hung", "0.1 mg", 10),
  repeated("hung", "0.01 g", 3),
  because(fewOwnRepeats, repeated("hung", "0.01 g", 5)),
  because(fewOwnRepeats, repeated("hung", "0.1 g", 4)),
  because(zeroBetween, repeated("displaced", "1 mg", 6)),
  because(zeroBetween, repeated("displaced", "0.01 g", 3)),
  because(fewOwnRepeats, repeated("flask", "1 mg", 4)),
  repeated("flask", "0.1 g", 3),
  {
    name: "hung, 0.01 g, 3 repeats, zeroed before each",
    reason: moreThanStated,
    scenario: { method: "hung", scale: "0.01 g", repeats: 3, bench: { zeroed: "each" } },
  },
  {
    name: "hung, 0.1 g, 4 repeats, display repeats itself",
    reason: fewOwnRepeats,
    scenario: {
      method: "hung",
      scale: "0.1 g",
      repeats: 4,
      bench: { dryScatterGrams: 0.01, wetScatterGrams: 0.01 },
    },
  },
  {
    name: "hung, 0.01 g, pieces of 4 to 10 g",
    scenario: { method: "hung", scale: "0.01 g", repeats: 3, grams: [4, 10] },
  },
  {
    name: "displaced, 0.1 mg, pieces of 0.5 to 2 g",
    scenario: { method: "displaced", scale: "0.1 mg", repeats: 1, grams: [0.5, 2] },
  },
  {
    name: "hung, 0.1 g, bars of 0.5 to 2 kg",
    scenario: { method: "hung", scale: "0.1 g", repeats: 2, grams: [500, 2000] },
  },
  {
    name: "hung, 0.01 g, tap water of unknown solids",
    scenario: { method: "hung", scale: "0.01 g", repeats: 1, pour: tapWater },
  },
  {
    name: "hung, 0.1 mg, wetting agent",
    scenario: { method: "hung", scale: "0.1 mg", repeats: 1, pour: wettedWater },
  },
  {
    name: "hung, 1 mg, water of 6 to 10 °C",
    scenario: { method: "hung", scale: "1 mg", repeats: 1, bench: { room: [6, 10] } },
  },
  {
    name: "displaced, 1 mg, water of 32 to 38 °C",
    scenario: { method: "displaced", scale: "1 mg", repeats: 1, bench: { room: [32, 38] } },
  },
  {
    name: "hung, 1 mg, ethanol stated at 20 °C with its expansion",
    scenario: { method: "hung", scale: "1 mg", repeats: 1, pour: ethanol },
  },
  {
    name: "displaced, 0.1 mg, fluorinated liquid",
    scenario: { method: "displaced", scale: "0.1 mg", repeats: 1, pour: fluorinated },
  },
  {
    name: "hung, 1 mg, brine measured with a known body",
    scenario: { method: "hung", scale: "1 mg", repeats: 1, pour: measuredBrine },
  },
  {
    name: "hung, 1 mg, hanger weighed in",
    scenario: { method: "hung", scale: "1 mg", repeats: 1, hangerShare: 0.3 },
  },
  {
    name: "hung, 1 mg, air by height, 0 m",
    scenario: { method: "hung", scale: "1 mg", repeats: 1, bench: { airBy: "height" } },
  },
  {
    name: "hung, 0.1 mg, air by height, 1600 m",
    scenario: { method: "hung", scale: "0.1 mg", repeats: 1, bench: { airBy: "height", metres: 1600 } },
  },
  {
    name: "hung, 0.1 mg, air by weather station",
    scenario: { method: "hung", scale: "0.1 mg", repeats: 1, bench: { airBy: "station" } },
  },
  {
    name: "displaced, 0.01 g, 20 like pieces pooled",
    scenario: {
      method: "displaced",
      scale: "0.01 g",
      repeats: 1,
      grams: [40, 400],
      states: (request) => ({ ...request, pieces: 20 }),
    },
  },
  {
    name: "hung, 1 mg, stone of known mass in the setting",
    scenario: {
      method: "hung",
      scale: "1 mg",
      repeats: 1,
      whole: withStone,
      states: (request, piece, chance) => ({
        ...request,
        added: [
          {
            name: "stone",
            mass_g: piece.grams * stone.share + chance.normal("mass of the stone", 0, 0.001),
            u_mass_g: 0.001,
            density_g_cm3: stone.gPerCm3 + chance.normal("density of the stone", 0, stone.uGPerCm3),
            u_density_g_cm3: stone.uGPerCm3,
          },
        ],
      }),
    },
  },
  {
    name: "hung, 1 mg, immersed on a second balance",
    scenario: {
      method: "hung",
      scale: "1 mg",
      repeats: 1,
      trouble: {
        // the second span in the place of the first
        grams: ({ load, grams, chance, bench }) =>
          load === "immersed" ? chance.normal("second span", 0, bench.spanRelative * Math.SQRT2) * grams : 0,
      },
      states: (request) => ({
        ...request,
        immersed: { ...request.immersed!, balance: request.balance },
      }),
    },
  },
  {
    name: "hung, 0.1 mg, dry piece set down off centre, 2 mg in 100 g",
    scenario: {
      method: "hung",
      scale: "0.1 mg",
      repeats: 1,
      trouble: {
        grams: ({ load, grams, chance }) =>
          load === "dry" ? chance.normal("off centre", 0, 2e-5) * grams : 0,
      },
      states: (request) => ({
        ...request,
        balance: { ...request.balance, eccentricity_u_per_g: 2e-5 },
      }),
    },
  },
  {
    name: "dimensions, 0.01 g, round bars of 30 g to 1 kg",
    scenario: { method: "dimensions", scale: "0.01 g", repeats: 1, grams: [30, 1000] },
  },
  {
    name: "dimensions, 1 mg, round bars of 3 to 30 g",
    scenario: { method: "dimensions", scale: "1 mg", repeats: 1, grams: [3, 30] },
  },
  {
    name: "hung, 0.01 g, silver in grains of the troy ounce",
    scenario: {
      method: "hung",
      scale: "0.01 g",
      repeats: 1,
      states: (request) => ({
        ...request,
        dry: inGrains(request.dry),
        ...(request.immersed && { immersed: inGrains(request.immersed) }),
        balance: { ...request.balance, readability_g: 0.01 },
      }),
    },
  },
];

/** Grains as the balance computes them from its own grams, to the tenth it can tell. */
function inGrains({ readings }: { readings: string[] }) {
  return { readings: readings.map((text) => (Number(text) / 0.06479891).toFixed(1)), unit: "gn" };
}
