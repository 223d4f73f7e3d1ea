import { lotOf } from "../lots/evolve.ts";
import { builtIn } from "../metals/library.ts";
import type { Piece } from "../weighing/piece.ts";
import { secondPersonAbove } from "../weighing/second-person.ts";
import type { BenchParts } from "./bench-parts.ts";
import { firstSettings } from "./bench-settings.ts";

/** The limit of the settings that asks for a second person now, by the locked prices of the piece's lot if it has any. */
export async function limitPassed(piece: Piece, parts: BenchParts): Promise<string | undefined> {
  const { secondPerson } = parts.preferences?.() ?? firstSettings;
  const library = parts.library?.() ?? builtIn;
  // Only a limit of worth asks for the lot, and a long lot is not read at every step for nothing.
  const lot =
    piece.lot === undefined || secondPerson.worth === ""
      ? undefined
      : lotOf(await parts.ledger.entriesOf(piece.lot));
  const claimed =
    piece.claim !== undefined && library.has(piece.claim) ? library.metal(piece.claim) : undefined;
  return secondPersonAbove(piece, secondPerson, lot && { prices: lot.prices, claimed });
}
