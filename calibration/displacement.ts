import type { Arithmetic } from "./arithmetic.ts";
import type { Load } from "./balance.ts";
import type { Input } from "./input.ts";

/**
 * The displaced mass: what the displaced liquid weighs on the balance, g, before bubbles and wire are taken off.
 * Everything else in a density hangs on it, and the three ways of weighing differ in nothing else.
 */
export type DisplacedMass = <N>(a: Arithmetic<N>, of: (input: Input) => N, dryGrams: N) => N;

/** Hung from the balance: dry less immersed. */
export function hung(immersed: Load): DisplacedMass {
  return (a, of, dry) => a.minus(dry, immersed.grams(a, of));
}

/** Vessel on the pan, piece hung from a stand: the rise itself. */
export function displaced(rise: Load): DisplacedMass {
  return (a, of) => rise.grams(a, of);
}

/** Flask filled to its mark: full flask and piece, less the flask with the piece in it. */
export function flask(full: Load, withPiece: Load): DisplacedMass {
  return (a, of, dry) => a.minus(a.plus(full.grams(a, of), dry), withPiece.grams(a, of));
}
