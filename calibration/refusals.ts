import type { Load } from "./balance.ts";
import type { Measurement } from "./measurement.ts";
import { Refusal } from "./refusal.ts";
import { coverageFactor } from "./student.ts";
import type { Weighing } from "./weighing.ts";

/**
 * Refuses weighings that cannot be a density: see each message. `at` is a key of a compute request. `wholeGrams`: what the
 * piece displaces together with the known bodies.
 */
export function refuseIfNothingDisplaced(
  { weighing, confidence, added }: Measurement,
  [dry, wet]: readonly Load[],
  displaced: { value: number; u: number },
  dryGrams: number,
  wholeGrams: () => number,
): void {
  const dry_g = dry!.mean;
  if (!(dry_g > 0)) throw new Refusal("measurement.dry-not-above-zero", { dry_g }, "dry");
  if (added?.length && wholeGrams() > 0) {
    if (!(dryGrams > 0)) throw new Refusal("measurement.added-outweigh", {}, "added");
    if (!(displaced.value > 0))
      throw new Refusal("measurement.added-fill", { displaced_g: wholeGrams() }, "added");
  }
  if (!(displaced.value > 0))
    throw new Refusal(
      weighing.nothing,
      { displaced_g: displaced.value, dry_g, wet_g: wet?.mean ?? 0 },
      weighing.key,
    );
  const reach = coverageFactor(confidence, Number.POSITIVE_INFINITY) * displaced.u;
  if (displaced.value <= reach) throw drowned(weighing, displaced.value, reach);
}

function drowned(weighing: Weighing, displaced: number, reach: number): Refusal {
  const { code, params } = weighing.drowned(displaced, reach);
  return new Refusal(code, params, weighing.key);
}

/** Refuses a density whose interval has no upper end: the displaced mass may be nothing at all. */
export function refuseEndless(
  { confidence, weighing }: Measurement,
  interval: readonly [number, number],
  displaced: { value: number; u: number },
): void {
  if (!interval.every(Number.isFinite))
    throw drowned(
      weighing,
      displaced.value,
      coverageFactor(confidence, Number.POSITIVE_INFINITY) * displaced.u,
    );
}
