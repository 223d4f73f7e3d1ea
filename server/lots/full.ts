import type { Lot } from "./lot.ts";
import type { LotItem } from "./lot-item.ts";

/** True once as many pieces stand in the lot as were counted; a voided record is no piece. Never without a count. */
export function isFull({ count }: Lot, items: readonly LotItem[]): boolean {
  return count !== undefined && items.filter(({ voided }) => !voided).length >= count;
}
