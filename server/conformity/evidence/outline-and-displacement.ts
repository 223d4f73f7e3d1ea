/** A volume in cm³ with its standard uncertainty. */
export interface Volume {
  cm3: number;
  uCm3: number;
}

/**
 * Volume of the outline against the volume that was displaced. Relief and rounded edges make the displaced volume the
 * smaller one; the other way round the weighing or the rule is at fault. Null when the two go together.
 */
export function outlineDoubt(outline: Volume, displaced: Volume): string | null {
  const u = Math.hypot(outline.uCm3, displaced.uCm3);
  const excess = displaced.cm3 - outline.cm3;
  if (excess > 2 * u)
    return `The piece displaced ${displaced.cm3.toFixed(3)} cm³ but its outline holds only ${outline.cm3.toFixed(3)} cm³: bubbles, a touching hanger or a wrong dimension; weigh again before any finding.`;
  if (displaced.cm3 < outline.cm3 * 0.5 - 2 * u)
    return `The piece displaced ${displaced.cm3.toFixed(3)} cm³, less than half of its outline's ${outline.cm3.toFixed(3)} cm³: was it wholly under water, and is the outline that of the metal?`;
  return null;
}
