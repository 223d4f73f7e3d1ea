import { gramsPerUnit } from "../../calibration/units.ts";
import type { Metal } from "../metals/metal.ts";
import { symbolOf } from "../metals/precious-metal.ts";
import { shareOf } from "../metals/share-of.ts";
import type { LotPrice } from "./price.ts";

/**
 * What a piece of this dry mass is worth at the promised prices of its lot if it is what it is said to be: its finest
 * permitted alloy, or fine metal throughout where nothing is said. Undefined where no price is for its metal. For limits
 * only; what is paid is counted exactly elsewhere.
 */
export function worthAtPrice(
  dryG: number,
  claimed: Metal | undefined,
  prices: readonly Pick<LotPrice, "metal" | "price" | "per" | "currency">[],
): { amount: number; currency: string } | undefined {
  const worths = prices.flatMap(({ metal, price, per, currency }) => {
    const most = claimed?.family === metal ? shareOf(claimed, symbolOf[metal])[1] : undefined;
    const part = claimed === undefined ? 1 : most;
    if (part === undefined) return [];
    return [{ amount: ((part * dryG) / Number(gramsPerUnit[per])) * Number(price), currency }];
  });
  return worths.sort((a, b) => b.amount - a.amount)[0];
}
