import { gramsPerUnit } from "../../calibration/units.ts";
import type { Metal } from "../metals/metal.ts";
import { symbolOf } from "../metals/precious-metal.ts";
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
    const [nominal, , high] = claimed?.composition[symbolOf[metal]] ?? [0, 0, 0];
    const part = claimed === undefined ? 1 : claimed.family === metal ? (high ?? nominal) : undefined;
    if (part === undefined) return [];
    return [{ amount: ((part * dryG) / Number(gramsPerUnit[per])) * Number(price), currency }];
  });
  return worths.sort((a, b) => b.amount - a.amount)[0];
}
