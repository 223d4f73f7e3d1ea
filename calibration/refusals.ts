import type { Load } from "./balance.ts";
import type { Measurement } from "./measurement.ts";
import { coverageFactor } from "./student.ts";
import type { Weighing } from "./weighing.ts";

/** A refusal that knows which part of the measurement it is about. */
export class Refusal extends RangeError {
  /** key of a compute request, such as "immersed" */
  readonly about: string;
  constructor(about: string, message: string) {
    super(message);
    this.about = about;
  }
}

const g = (x: number) => `${Number(x.toPrecision(6))} g`;

/** Refuses weighings that cannot be a density: see each message. */
export function refuseIfNothingDisplaced(
  { weighing, confidence, added }: Measurement,
  [dry, wet]: readonly Load[],
  displaced: { value: number; u: number },
  dryGrams: number,
): void {
  if (!(dry!.mean > 0))
    throw new Refusal(
      "dry",
      `The dry reading comes to ${g(dry!.mean)}: right is a mass above zero. Zero the empty balance and weigh the piece again.`,
    );
  if (!(displaced.value > 0)) {
    const why = weighing.nothingBecause(dry!.mean, wet?.mean ?? 0);
    throw new Refusal(weighing.key, `Nothing was displaced (${g(displaced.value)}): ${why}`);
  }
  const reach = coverageFactor(confidence, Number.POSITIVE_INFINITY) * displaced.u;
  if (displaced.value <= reach) throw drowned(weighing, displaced.value, reach);
  if (!(dryGrams > 0) && added?.length)
    throw new Refusal("added", "The known bodies weigh as much as the whole piece: check their masses.");
}

function drowned({ key }: Weighing, displaced: number, reach: number): Refusal {
  return new Refusal(
    key,
    `The displaced mass ${g(displaced)} is within its own uncertainty of ${g(reach)}: this balance cannot tell it from zero, so no density follows. ` +
      "Weigh a larger piece, several identical pieces together, or use a finer balance.",
  );
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
