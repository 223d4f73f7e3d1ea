import type { MassFractions } from "./mixture.ts";

/** Lowest and highest mass fraction of each component. */
export type CompositionRange = Readonly<Record<string, readonly [low: number, high: number]>>;

const slack = 1e-9;

/**
 * The corners of everything a range allows: all components but one at an end of theirs, that one making up the whole.
 * Every composition of the range lies between them, so a mean or an extreme of what is straight in the composition is
 * found on them. Throws RangeError where no composition of the range adds up to 1.
 */
export function cornersOf(range: CompositionRange): MassFractions[] {
  const names = Object.keys(range);
  const corners = new Map<string, MassFractions>();
  for (const free of names) {
    const others = names.filter((name) => name !== free);
    for (let pick = 0; pick < 2 ** others.length; pick++) {
      const corner = Object.fromEntries(
        others.map((name, place) => [name, range[name]![(pick >> place) & 1 ? 1 : 0]]),
      );
      const left = 1 - Object.values(corner).reduce((sum, share) => sum + share, 0);
      const [low, high] = range[free]!;
      if (left < low - slack || left > high + slack) continue;
      corner[free] = Math.min(high, Math.max(low, left));
      corners.set(names.map((name) => corner[name]!.toFixed(9)).join(), corner);
    }
  }
  if (corners.size === 0)
    throw new RangeError(`No composition within ${JSON.stringify(range)} adds up to 1.`);
  return [...corners.values()];
}

/** True when everything the first range allows is allowed by the second. */
export function isWithin(inner: CompositionRange, outer: CompositionRange): boolean {
  const names = new Set([...Object.keys(inner), ...Object.keys(outer)]);
  const nothing = [0, 0] as const;
  return [...names].every((name) => {
    const [[low, high], [least, most]] = [inner[name] ?? nothing, outer[name] ?? nothing];
    return low >= least - slack && high <= most + slack;
  });
}
