import { builtIn } from "../metals/library.ts";
import { settlementOf } from "../settlements/evolve.ts";
import { currentPrices } from "../settlements/settlement.ts";
import type { Item } from "../weighing/item.ts";
import { limitOfItem, secondPersonAbove } from "../weighing/second-person.ts";
import type { BenchParts } from "./bench-parts.ts";
import { firstSettings } from "./bench-settings.ts";

/** The limit of the settings that asks for a second person now, by the locked prices of the piece's lot if it has any. */
export const limitPassed = (item: Item, parts: BenchParts) => limitBy(secondPersonAbove, item, parts);

/** The same whoever took its readings: what is put right is typed. */
export const limitOfAmendment = (item: Item, parts: BenchParts) => limitBy(limitOfItem, item, parts);

async function limitBy(
  limit: typeof limitOfItem,
  item: Item,
  parts: BenchParts,
): Promise<string | undefined> {
  const { secondPerson } = parts.preferences?.() ?? firstSettings;
  const library = parts.library?.() ?? builtIn;
  // Only a limit of worth asks for the lot, and a long lot is not read at every step for nothing.
  const prices =
    item.lot === undefined || secondPerson.worth === ""
      ? undefined
      : currentPrices(settlementOf(await parts.ledger.entriesOf(item.lot)));
  const claimed = item.claim !== undefined && library.has(item.claim) ? library.metal(item.claim) : undefined;
  return limit(item, secondPerson, prices && { prices, claimed });
}
