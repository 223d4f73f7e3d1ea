import type { Load } from "./balance.ts";
import type { Measurement } from "./measurement.ts";
import { coverageFactor } from "./student.ts";

/** A refusal that knows which part of the measurement it is about. */
export class Refusal extends RangeError {
  readonly about: "dry" | "weighing" | "added";
  constructor(about: Refusal["about"], message: string) {
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
    const why =
      weighing.method === "hung"
        ? `the immersed reading ${g(wet!.mean)} is not below the dry reading ${g(dry!.mean)}. Were the two swapped, or was the piece not in the liquid?`
        : weighing.method === "displaced"
          ? `the rise ${g(wet!.mean)} is not above zero. Was the vessel tared with the hanger alone in the liquid?`
          : "flask and piece together are not lighter than the full flask plus the piece. Were the flask readings swapped?";
    throw new Refusal("weighing", `Nothing was displaced (${g(displaced.value)}): ${why}`);
  }
  const reach = coverageFactor(confidence, Number.POSITIVE_INFINITY) * displaced.u;
  if (displaced.value <= reach) throw drowned(displaced.value, reach);
  if (!(dryGrams > 0) && added?.length)
    throw new Refusal("added", "The known bodies weigh as much as the whole piece: check their masses.");
}

function drowned(displaced: number, reach: number): Refusal {
  return new Refusal(
    "weighing",
    `The displaced mass ${g(displaced)} is within its own uncertainty of ${g(reach)}: this balance cannot tell it from zero, so no density follows. ` +
      "Weigh a larger piece, several identical pieces together, or use a finer balance.",
  );
}

/** Refuses a density whose interval has no upper end: the displaced mass may be nothing at all. */
export function refuseEndless(
  { confidence }: Measurement,
  interval: readonly [number, number],
  displaced: { value: number; u: number },
): void {
  if (!interval.every(Number.isFinite))
    throw drowned(displaced.value, coverageFactor(confidence, Number.POSITIVE_INFINITY) * displaced.u);
}
