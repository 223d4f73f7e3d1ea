import type { Arithmetic } from "./arithmetic.ts";
import type { Expression, Input } from "./input.ts";

/** Density of the weights a balance is adjusted with, kg/m³, by convention (OIML D 28:2004). */
export const referenceWeightKgPerM3 = 8000;

/**
 * The displaced mass: what the displaced liquid weighs on the balance, g, before bubbles and wire are taken off.
 * Everything else in a density hangs on it, and the ways of weighing differ in nothing else. `dryGrams` is the dry
 * reading less its zero, `scale` is 1 + span error of the balance.
 */
export type DisplacedMass = <N>(
  a: Arithmetic<N>,
  of: (input: Input) => N,
  at: { dryGrams: N; scale: N },
) => N;

/** Everything a density is made of, each as an expression over the named inputs. */
export interface DensityParts {
  /** dry reading less its zero, g */
  dryGrams: Expression;
  displacedGrams: DisplacedMass;
  /** what lifts on the balance and is no displacement of the piece, g: bubbles, change of the pull on the hanger */
  untrueGrams: Expression;
  liquidKgPerM3: Expression;
  airKgPerM3: Input;
  /** relative error of the balance's scale; the same on every reading */
  span: Input;
  /** bodies of known mass and density weighed with the piece */
  added: readonly { grams: Input; kgPerM3: Input }[];
  celsius: Expression;
  /** cubic expansion of the piece, 1/°C */
  expansionPerCelsius: Input;
}

/** What the weighings come to, over any arithmetic. */
export interface Weighed<N> {
  kgPerM3: N;
  kgPerM3At20: N;
  grams: N;
  cm3: N;
  /** dry over displaced, without air and temperature: the relative density of a plain calculation */
  apparent: N;
  /** dry reading, less what is known of the added bodies, times the scale */
  dryGrams: N;
  displacedGrams: N;
  liquidKgPerM3: N;
  /** 1 + span error */
  scale: N;
}

/**
 * The measurement model, written once. With R the dry reading, D the displaced mass, ρL the liquid and ρa the air:
 * ρ = (R/D)(ρL − ρa) + ρa, V = D(1 − ρa/ρc)/(ρL − ρa), m = ρV. For a balance adjusted with weights of ρc = 8000 kg/m³
 * the factor (1 − ρa/ρc) cancels in ρ as long as the air is the same for both readings; so does the span error.
 * OIML R 111-1:2004, B.7 method B [clause from memory]. Added bodies are taken off R and D by their own mass and volume.
 */
export function weighed<N>(parts: DensityParts, a: Arithmetic<N>, of: (input: Input) => N): Weighed<N> {
  const scale = a.plus(a.of(1), of(parts.span));
  const air = of(parts.airKgPerM3);
  const liquid = parts.liquidKgPerM3(a, of);
  const lift = a.minus(liquid, air);
  const weights = a.minus(a.of(1), a.times(air, a.of(1 / referenceWeightKgPerM3)));
  const read = parts.dryGrams(a, of);
  const rise = parts.displacedGrams(a, of, { dryGrams: read, scale });
  let dry = a.times(read, scale);
  let displacedGrams = a.times(a.minus(rise, parts.untrueGrams(a, of)), scale);
  for (const body of parts.added) {
    const cm3 = a.over(a.times(of(body.grams), a.of(1000)), of(body.kgPerM3));
    const pull = a.minus(of(body.grams), a.times(cm3, a.times(air, a.of(1e-3))));
    dry = a.minus(dry, a.over(pull, weights));
    displacedGrams = a.minus(displacedGrams, a.over(a.times(cm3, a.times(lift, a.of(1e-3))), weights));
  }
  const apparent = a.over(dry, displacedGrams);
  const kgPerM3 = a.plus(a.times(apparent, lift), air);
  const cm3 = a.over(a.times(displacedGrams, a.times(weights, a.of(1000))), lift);
  const warmer = a.minus(parts.celsius(a, of), a.of(20));
  return {
    kgPerM3,
    kgPerM3At20: a.times(kgPerM3, a.plus(a.of(1), a.times(of(parts.expansionPerCelsius), warmer))),
    grams: a.times(a.times(kgPerM3, a.of(1e-3)), cm3),
    cm3,
    apparent,
    dryGrams: dry,
    displacedGrams,
    liquidKgPerM3: liquid,
    scale,
  };
}

/** One of the results as an expression, for a budget or a Monte Carlo of its own. */
export function only(parts: DensityParts, key: keyof Weighed<number>): Expression {
  return (a, of) => weighed(parts, a, of)[key];
}
