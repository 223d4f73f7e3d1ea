import { benches, type Scale } from "./benches.ts";
import { type Chance, chances } from "./chance.ts";
import { type Answer, compute } from "./underhook.ts";
import { type Method, type Piece, weigh } from "./weighing.ts";
import type { Bench } from "./world.ts";

/** A class of virtual measurements: one way of weighing on one bench. */
export interface MeasurementClass {
  method: Method;
  scale: Scale;
  repeats: number;
  count: number;
  /** what the bench truly does, where it is not what it states */
  truly?: Partial<Bench>;
}

/** A claim with what the piece truly is, for the findings. */
export interface Told {
  claim: string;
  genuine: boolean;
  /** true density at the temperature of the water */
  gPerCm3: number;
}

export interface Measured {
  piece: Piece;
  told?: Told;
  answer: Answer;
}

const metals = [8.5, 8.94, 10.32, 10.5, 11.34, 13.6, 15.5, 17.5, 19.3, 21.45];

/** Measures a whole class through the command line. */
export async function measured(
  classOf: MeasurementClass,
  seed: number,
  tell?: (chance: Chance) => Told,
): Promise<Measured[]> {
  const { method, scale, repeats, count, truly = {} } = classOf;
  const { bench, lightestGrams, heaviestGrams } = benches[scale];
  const set = chances(seed, count).map((chance, n) => {
    const told = tell?.(chance);
    const piece: Piece = {
      grams: lightestGrams * (heaviestGrams / lightestGrams) ** chance.share("mass"),
      gPerCm3: told?.gPerCm3 ?? metals[Math.floor(chance.share("metal") * metals.length)]!,
    };
    const request = weigh(`${n}`, method, piece, { ...bench, ...truly }, repeats, chance, told?.claim);
    // the owner states the bench as described, whatever it truly does
    request.balance.repeatability_g = bench.dryScatterGrams;
    request.balance.immersed_repeatability_g = bench.wetScatterGrams;
    request.liquid.temperature_u_c = bench.thermometerCelsius;
    request.bubble_allowance_mg = bench.bubblesMg;
    return { piece, request, ...(told === undefined ? {} : { told }) };
  });
  const answers = await compute(set.map(({ request }) => request));
  return set.map(({ piece, told }, n) => ({
    piece,
    answer: answers[n]!,
    ...(told === undefined ? {} : { told }),
  }));
}

export interface Coverage {
  count: number;
  refused: number;
  /** share of the true densities inside the stated interval */
  covered: number;
  below: number;
  above: number;
  /** share of intervals that come from Monte Carlo */
  fromTrials: number;
  /** median of U/ρ */
  relativeU: number;
}

export function coverage(all: readonly Measured[]): Coverage {
  const stated = all.filter(({ answer }) => answer.error === undefined);
  const share = (those: (one: Measured) => boolean) => stated.filter(those).length / stated.length;
  const below = share(({ piece, answer }) => piece.gPerCm3 < answer.interval_g_cm3[0]);
  const above = share(({ piece, answer }) => piece.gPerCm3 > answer.interval_g_cm3[1]);
  const relative = stated
    .map(({ answer }) => (answer.k * answer.u_g_cm3) / answer.density_g_cm3)
    .sort((a, b) => a - b);
  return {
    count: all.length,
    refused: all.length - stated.length,
    covered: 1 - below - above,
    below,
    above,
    fromTrials: share(({ answer }) => answer.interval_from === "monte-carlo"),
    relativeU: relative[relative.length >> 1]!,
  };
}
