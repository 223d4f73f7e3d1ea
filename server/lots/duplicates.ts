import { message } from "../../calibration/message.ts";
import type { LotCheck } from "./lot-check.ts";
import type { LotItem } from "./lot-item.ts";

/** So few pairs of one mass may be chance before a pair says anything. */
const chancePairs = 0.5;

/**
 * Pieces of one mass to the last digit whose densities go together: perhaps one piece weighed twice. On a coarse scale
 * such pairs are chance; then only a pair that explains what the sum has too much is told. Masses in g.
 */
export function duplicates(
  items: readonly LotItem[],
  excess: number | undefined,
  withinG: number,
): LotCheck[] {
  const byMass = new Map<string, LotItem[]>();
  for (const item of items) {
    const key = `${Math.round(item.dryG / item.stepG)} of ${item.stepG}`;
    byMass.set(key, [...(byMass.get(key) ?? []), item]);
  }
  const masses = items.map(({ dryG }) => dryG);
  const span = Math.max(...masses) - Math.min(...masses);
  const step = Math.max(...items.map(({ stepG }) => stepG));
  const expected = span > 0 ? ((items.length * (items.length - 1)) / 2) * (step / span) : 0;
  return [...byMass.values()].flatMap((same): LotCheck[] => {
    const [first, ...others] = same;
    if (!first) return [];
    const alike = others.filter(({ density }) => goTogether(density, first.density));
    if (alike.length === 0) return [];
    const explains = excess !== undefined && Math.abs(excess - first.dryG) <= withinG;
    if (!explains && expected > chancePairs) return [];
    return [
      {
        flag: "same mass",
        message: message(explains ? "lot-check.same-mass-in-excess" : "lot-check.same-mass", {
          tickets: alike.length + 1,
          mass_g: Number(first.dryG.toPrecision(8)),
        }),
        remedy: message("lot-check.same-mass-remedy"),
        tickets: [first, ...alike].map(({ ticket }) => ticket),
      },
    ];
  });
}

/** True when two densities differ by no more than their uncertainties. */
function goTogether(one: LotItem["density"], other: LotItem["density"]): boolean {
  if (!one || !other) return false;
  return Math.abs(one.value - other.value) <= Math.hypot(one.expanded, other.expanded);
}
