import { gramsPerUnit } from "../../calibration/units.ts";
import type { Metal } from "../metals/metal.ts";
import type { Lot } from "./lot.ts";

const symbols = { gold: "Au", silver: "Ag" } as const;

/**
 * What a piece of this dry mass is worth at the locked prices of its lot if it is what it is said to be: its finest
 * permitted alloy, or fine metal throughout where nothing is said. Undefined where no locked price is for its metal.
 */
export function worthAtPrice(
  dryG: number,
  claimed: Metal | undefined,
  prices: Lot["prices"],
): { amount: number; currency: string } | undefined {
  const worths = Object.values(prices).flatMap(({ metal, price, per, currency }) => {
    const [nominal, , high] = claimed?.composition[symbols[metal]] ?? [0, 0, 0];
    const part = claimed === undefined ? 1 : claimed.family === metal ? (high ?? nominal) : undefined;
    if (part === undefined) return [];
    return [{ amount: ((part * dryG) / Number(gramsPerUnit[per])) * Number(price), currency }];
  });
  return worths.sort((a, b) => b.amount - a.amount)[0];
}
